import { describe, expect, it } from 'vitest';
import { repository, shopFiles } from './shop-files';

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
    it('with orders, what they want and runs have not made, by its day and for whom', async () => {
        const orders = `order 2026-11-24 "the ferry office" {
  coaster 6 due 2026-12-02
  plate 2
}
order 2026-11-20 { plate 9 delivered 2026-11-23 }
run coaster 2026-11-25 { made 2 spoiled 1 took 1 h 30 min by "Ida" }
`;
        const shop = repository({ ...shopFiles, 'orders.kerf': orders });
        const { out } = await shop.kerfbook([...start, '--format', 'json']);
        expect(JSON.parse(out)).toMatchObject({
            orders: [
                { recipe: 'plate', pieces: 2, for: 'the ferry office', ordered: '2026-11-24' },
                { recipe: 'coaster', pieces: 4, due: '2026-12-02' },
            ],
        });
        expect((await shop.kerfbook([...start, '--format', 'icalendar'])).out).not.toContain('ferry');
        const done = repository({ ...shopFiles, 'orders.kerf': 'order 2026-11-20 { plate 9 delivered 2026-11-23 }\n' });
        expect((await done.kerfbook(start)).err).toContain('All that was ordered in these files is made or delivered.');
        expect((await shop.kerfbook(['check', 'orders.kerf'])).out).not.toMatch(/orders\.kerf:\d+:\d+: (?:error|warning)/);
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

describe('kerfbook season', () => {
    const runs = `run coaster 2026-10-25 { made 2 spoiled 1 took 1 h 30 min by "Ida" }
run coaster 2026-11-25 { made 4 }
run plate 2026-11-26 { note "Not counted." }
`;
    const book = () => repository({ ...shopFiles, 'runs.kerf': runs });

    it('sums the runs by recipe, in every format', async () => {
        const { code, out } = await book().kerfbook(['season']);
        expect(out).toMatch(/^2026-10-25 to 2026-11-26: 3 runs, 6 pieces made, 1 spoiled \(14\.3 % of what was begun\)\.$/m);
        expect(out).toMatch(/^coaster +2 +6 +1 /m);
        expect(out).toMatch(/^Ida: 2 pieces, 1 h 30 min$/m);
        expect(code).toBe(0);
        const { out: json } = await book().kerfbook(['season', '--format', 'json']);
        expect(JSON.parse(json)).toMatchObject({ schema: 1, total: { runs: 3, uncounted: 1, made: 6 } });
        expect((await book().kerfbook(['season', '--format', 'html'])).out).toMatch(/<td>in all<\/td><td>3<\/td><td>6<\/td>/);
        expect((await book().kerfbook(['season', '--format', 'csv'])).out).toMatch(/\r\ncoaster,Coaster,2,0,6,1,/);
    });
    it('of the days and files that are asked for', async () => {
        expect((await book().kerfbook(['season', '--from', '2026-11-01', '--to', '2026-11-25'])).out).toMatch(/1 run, 4 pieces/);
        expect((await book().kerfbook(['season', 'plate.kerf'])).out).toMatch(/1 run, 0 pieces made/);
        expect((await book().kerfbook(['season', '--from', 'soon'])).err).toContain('--from is a day');
        expect((await book().kerfbook(['season', '--from', '2027-01-01'])).err).toContain('No run is written down');
    });
    it('takes off what is on hand, as it is written in the stock, and what runs used since', async () => {
        const shop = folder();
        const counted = (more = '') => `use "stock/shop.kerf"
board oak-12 {
  wood white-oak
  thickness 12 mm
  sheet 500 x 300 mm
  on hand 9 sheet counted 2026-11-01
  on hand 1 sheet counted 2026-11-20
  offcut 260 x 180 mm counted 2026-11-20
  offcut 999 x 999 mm counted 2026-11-19
}
resin sea { kind slow-epoxy mix 2 : 1 by volume density 1.1 g/cm3 on hand 500 g counted 2026-11-20 on hand 0 g of hardener counted 2026-11-20 }
recipe oak-plate {
  laser shed
  make 3
  art flag "art/flag.svg"
  blank plate { of oak-12 size 240 x 170 mm grain along width }
  engrave hollow on plate { art flag power 60 % speed 300 mm/s passes 3 air off }
  fill hollow with sea
  wait 24 h
  sand plate { flush grits 120 }
}
${more}`;
        const asked = ['week', 'oak.kerf', '--start', '2026-12-01', '--format', 'json'];
        shop.write({ 'oak.kerf': counted() });
        const book = JSON.parse((await shop.kerfbook(asked)).out) as {
            cuttings: { offcuts: unknown[] }[];
            shopping: { item: string; onHand: number | null; buy: number }[];
        };
        const line = (item: string) => book.shopping.find((each) => each.item === item);
        expect(book.cuttings[0]!.offcuts).toMatchObject([{ offcut: { width: 260, height: 180 } }]);
        expect(line('oak-12')).toMatchObject({ onHand: 1, buy: 0 });
        expect(line('sea')!.onHand).toBeCloseTo(500 / 1.1, 0);
        expect(line('sea')!.buy).toBe(0);
        expect(line('sea hardener')).toMatchObject({ onHand: 0 });
        expect(line('sea hardener')!.buy).toBeGreaterThan(0);
        shop.write({ 'oak.kerf': counted('run oak-plate 2026-11-25 { made 2 spoiled 1 }') });
        const text = (await shop.kerfbook(asked.slice(0, 4))).out;
        expect(text).toMatch(/Too little on hand: oak-12, sea hardener\./);
    });
});
