import { describe, expect, test } from 'vitest';
import { jobOf, placeOf, TickBook } from '../../extension/checklist/ticks';

/** The editor's memory; what is written in one session is there in the next. */
function memory() {
    const kept = new Map<string, string>();
    return {
        get: <T>(key: string) => (kept.has(key) ? (JSON.parse(kept.get(key)!) as T) : undefined),
        update: async (key: string, value: unknown) => void kept.set(key, JSON.stringify(value)),
    };
}

const tray = jobOf('file:///w/tray.kerf', 'tray');
const press = { id: 'wait-1', label: 'Wait 12 h', wait: 12 * 3600 };
const engrave = { id: 'engrave-pocket', label: 'Engrave pocket' };

describe('the checklist keeps ticks', () => {
    test('by recipe and step', () => {
        const book = new TickBook(memory());
        book.tick(tray, engrave, 1000);
        expect(Object.keys(book.of(tray))).toEqual(['engrave-pocket']);
        expect(book.of(jobOf('file:///w/tray.kerf', 'other'))).toEqual({});
        book.untick(tray, 'engrave-pocket');
        expect(book.of(tray)).toEqual({});
    });

    test('a reset clears one recipe and leaves the others', () => {
        const book = new TickBook(memory());
        const other = jobOf('file:///w/sign.kerf', 'sign');
        book.tick(tray, engrave, 0);
        book.tick(other, engrave, 0);
        book.reset(tray);
        expect(book.of(tray)).toEqual({});
        expect(Object.keys(book.of(other))).toEqual(['engrave-pocket']);
    });
});

describe('a wait that is ticked', () => {
    test('runs from the tick, over a restart, and is announced once', () => {
        const kept = memory();
        new TickBook(kept).tick(tray, press, 5000);
        const end = 5000 + 12 * 3600 * 1000;
        const next = new TickBook(kept);
        expect(next.of(tray)['wait-1']!.ends).toBe(end);
        expect(next.isWaiting(end - 1)).toBe(true);
        expect(next.takeOverdue(end - 1)).toEqual([]);
        expect(next.takeOverdue(end).map(({ job, id }) => [job, id])).toEqual([[tray, 'wait-1']]);
        expect(next.takeOverdue(end + 1)).toEqual([]);
        expect(next.isWaiting(end)).toBe(false);
    });

    test('rings, over a restart too, until the maker has seen it', () => {
        const kept = memory();
        new TickBook(kept).tick(tray, { ...press, detail: 'the glue cures' }, 0);
        const end = 12 * 3600 * 1000;
        expect(new TickBook(kept).unseen(end - 1)).toEqual([]);
        new TickBook(kept).takeOverdue(end);
        const [rings] = new TickBook(kept).unseen(end);
        expect(rings?.tick.reason).toBe('the glue cures');
        new TickBook(kept).see([rings!]);
        expect(new TickBook(kept).unseen(end)).toEqual([]);
        new TickBook(kept).tick(tray, press, end);
        expect(new TickBook(kept).unseen(2 * end)).toHaveLength(1);
    });

    test('that was unticked meanwhile is not ticked by having been seen', () => {
        const book = new TickBook(memory());
        book.tick(tray, press, 0);
        const rings = book.unseen(Number.MAX_SAFE_INTEGER);
        book.untick(tray, 'wait-1');
        book.see(rings);
        expect(book.of(tray)).toEqual({});
    });

    test('knows the recipe that it belongs to', () => {
        expect(placeOf(tray)).toEqual({ uri: 'file:///w/tray.kerf', recipe: 'tray' });
    });

    test('stops when it is unticked', () => {
        const book = new TickBook(memory());
        book.tick(tray, press, 0);
        book.untick(tray, 'wait-1');
        expect(book.takeOverdue(Number.MAX_SAFE_INTEGER)).toEqual([]);
    });

    test.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY])('of %d s starts no timer', (wait) => {
        const book = new TickBook(memory());
        book.tick(tray, { ...press, wait }, 0);
        expect(book.of(tray)['wait-1']!.ends).toBeUndefined();
    });
});

describe('what is ticked', () => {
    test('goes with its file', () => {
        const book = new TickBook(memory());
        book.tick(tray, engrave, 0);
        book.move((uri) => uri.replace('/w/', '/v/'));
        expect(book.of(tray)).toEqual({});
        expect(Object.keys(book.of(jobOf('file:///v/tray.kerf', 'tray')))).toEqual(['engrave-pocket']);
    });

    test('waits as long as the recipe says now, from its tick, and rings again only where the new end is still to come', () => {
        const book = new TickBook(memory());
        const hours = (count: number) => count * 3600 * 1000;
        book.tick(tray, press, 0);
        book.see(book.takeOverdue(hours(12)));
        expect(book.unseen(hours(12))).toEqual([]);
        expect(book.adjust(tray, [press], hours(13))).toBe(false);
        expect(book.adjust(tray, [{ ...press, wait: 24 * 3600 }], hours(13))).toBe(true);
        expect(book.of(tray)['wait-1']!.ends).toBe(hours(24));
        expect(book.takeOverdue(hours(24))).toHaveLength(1);
        book.see(book.unseen(hours(24)));
        expect(book.adjust(tray, [{ ...press, wait: 6 * 3600 }], hours(25))).toBe(true);
        expect(book.unseen(hours(25))).toEqual([]);
        expect(book.adjust(tray, [{ id: press.id, label: press.label }], hours(25))).toBe(false);
    });

    test('rings for no recipe that is gone, and for it once it is back', () => {
        const book = new TickBook(memory());
        book.tick(tray, press, 0);
        const end = 12 * 3600 * 1000;
        expect(book.jobsOver(end)).toEqual([tray]);
        expect(book.takeOverdue(end, () => false)).toEqual([]);
        expect(book.takeOverdue(end, () => true)).toHaveLength(1);
    });
});
