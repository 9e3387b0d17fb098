import { describe, expect, it } from 'vitest';
import { repository } from './shop-files';

const folder = () => repository();
const start = ['week', '--start', '2026-12-01'];

describe('kerfbook week', () => {
    it('all recipes of a folder in one book, from eight in the morning', async () => {
        const { code, out } = await folder().kerfbook(start);
        expect(out).toMatch(/^From Tue 1 Dec 2026, 08:00: 2 orders, 3 pieces\. 1 pair of hands, day and night\./);
        expect(out).toMatch(/^ {4}coaster: Engrave hollow, 2 pieces, .*laser shed runs/m);
        expect(out).toMatch(/^Buy$/m);
        expect(code).toBe(0);
    });
    it('only the recipes of the files that are named, on the days on which the shop is open', async () => {
        const { out } = await folder().kerfbook([...start, 'plate.kerf', '--closed', 'tue,wed']);
        expect(out).toMatch(/1 order, 1 piece.*closed on Tuesday and Wednesday/);
        expect(out).toMatch(/^Thu 3 Dec 2026$/m);
        expect(out).not.toContain('coaster');
    });
    it('as JSON in base units, and as CSV for orders, jobs and shopping', async () => {
        const shop = folder();
        const { out } = await shop.kerfbook([...start, '--makers', '2', '--format', 'json']);
        expect(JSON.parse(out)).toMatchObject({ schema: 1, start: '2026-12-01T08:00', makers: 2, orders: [{}, {}] });
        for (const [format, head] of [
            ['orders-csv', 'recipe,title,for,pieces'],
            ['jobs-csv', 'hands,start,end,recipe'],
            ['shopping-csv', 'item,kind,needed,on hand,buy'],
        ] as const) {
            const rows = (await shop.kerfbook([...start, '--format', format])).out.split('\r\n');
            expect(rows[0]!.startsWith(head)).toBe(true);
            expect(rows.length).toBeGreaterThan(3);
            expect(rows.join('')).not.toContain('\n');
        }
    });
    it('as a page on which nothing can run, and as a calendar with a sitting and a wait', async () => {
        const shop = folder();
        const html = (await shop.kerfbook([...start, '--format', 'html'])).out;
        expect(html).toMatch(/^<!doctype html>/);
        expect(html).toContain('default-src &#39;none&#39;');
        for (const heading of ['Orders', 'Load', 'Days', 'Buy']) expect(html).toContain(`<h2>${heading}</h2>`);
        const { out } = await shop.kerfbook([...start, '--format', 'icalendar']);
        expect(out).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\n/);
        expect(out).toMatch(/TRANSP:OPAQUE\r\n/);
        expect(out).toMatch(/TRANSP:TRANSPARENT\r\n/);
        const uids = [...out.matchAll(/^UID:.*$/gm)].map(([uid]) => uid);
        expect(new Set(uids).size).toBe(uids.length);
    });
    it.each([
        [['week'], '--start 2026-11-26'],
        [['week', '--start', 'soon'], '--start is a date'],
        [[...start, '--makers', '0'], '--makers is how many pairs'],
        [[...start, '--closed', 'someday'], '--closed is a list of'],
        [[...start, '--closed', 'mon,tue,wed,thu,fri,sat,sun'], 'leaves no day'],
        [[...start, 'stock'], 'There is no recipe in these files.'],
    ])('says what is wrong with %j', async (args, message) => {
        const { code, err } = await folder().kerfbook(args);
        expect(err).toContain(message);
        expect(code).toBe(2);
    });
});
