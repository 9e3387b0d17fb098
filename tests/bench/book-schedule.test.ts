import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BookSchedule, bookSchedule } from '../../shared/bench/book-schedule';
import type { Bench, Order } from '../../shared/bench/list-schedule';
import type { Work } from '../../shared/bench/work';
import { WorkHours } from '../../shared/bench/work-hours';

const hour = 3600;
const day = 24 * hour;
const work = (part: Partial<Work>): Work => ({ setUp: 0, each: 0, machine: 0, wait: 0, after: [], ...part });
const chain = (...parts: Partial<Work>[]): Work[] => parts.map((part, i) => work({ after: i === 0 ? [] : [i - 1], ...part }));
const alone = (makers = 1, workday?: number): Bench => ({ makers, hours: new WorkHours(workday) });

/** Holds whatever the orders are. */
function checkValid(book: BookSchedule, { makers, hours }: Bench): void {
    const { orders, turns } = book;
    expect(turns).toHaveLength(orders.reduce((sum, { works, pieces }) => sum + works.length * pieces, 0));
    const ready = new Map(turns.map((turn) => [`${turn.order} ${turn.piece} ${turn.work}`, turn.ready]));
    expect(ready.size).toBe(turns.length);
    for (const { order, piece, work: index, start, end } of turns) {
        for (const before of orders[order]!.works[index]!.after)
            expect(start).toBeGreaterThanOrEqual(ready.get(`${order} ${piece} ${before}`)!);
        if (end > start) expect(hours.fits(start, end - start)).toBe(true);
    }
    const inHand = turns.filter(({ start, end }) => end > start).sort((a, b) => a.start - b.start);
    const apart = (some: typeof inHand): void => {
        for (const [i, turn] of some.slice(1).entries()) expect(turn.start).toBeGreaterThanOrEqual(some[i]!.end);
    };
    for (let maker = 0; maker < makers; maker++) apart(inHand.filter((turn) => turn.maker === maker));
    const stationOf = (turn: (typeof inHand)[number]) => orders[turn.order]!.works[turn.work]!.station;
    for (const station of new Set(inHand.map(stationOf)))
        if (station !== undefined) apart(inHand.filter((turn) => stationOf(turn) === station));
    expect(book.ready).toBe(Math.max(0, ...turns.map((turn) => turn.ready)));
    expect(book.ready).toBeGreaterThanOrEqual(book.least.ready);
}

/**
 * The 6 x 6 job shop of Fisher and Thompson (1963), known as ft06 or mt06: machine from 1 and time of each operation. Rows as read in
 * data/fjs_data/Readme.md of mcfadd/Job_Shop_Schedule_Problem; the optimum of 55 as read in the short readme of the job-shop data of
 * plaborie/cpoptimizer.
 */
const ft06 = [
    [3, 1, 1, 3, 2, 6, 4, 7, 6, 3, 5, 6],
    [2, 8, 3, 5, 5, 10, 6, 10, 1, 10, 4, 4],
    [3, 5, 4, 4, 6, 8, 1, 9, 2, 1, 5, 7],
    [2, 5, 1, 5, 3, 5, 4, 3, 5, 8, 6, 9],
    [3, 9, 2, 3, 5, 5, 6, 4, 1, 3, 4, 1],
    [2, 3, 4, 3, 6, 9, 1, 10, 5, 4, 3, 1],
].map((row): Order => {
    const steps = Array.from({ length: 6 }, (_, i) => ({ station: `m${row[2 * i]}`, machine: row[2 * i + 1]! }));
    return { works: chain(...steps), pieces: 1 };
});

describe('a published job shop', () => {
    it('is bounded by no more than its optimum, and laid out validly within a fifth of it', () => {
        const book = bookSchedule(ft06, alone(6));
        checkValid(book, alone(6));
        expect(book.least.ready).toBeLessThanOrEqual(55);
        // The longest job takes 47, and the list schedule is none of the best known.
        expect(book.least.ready).toBeGreaterThanOrEqual(47);
        expect(book.ready).toBeGreaterThanOrEqual(55);
        expect(book.ready).toBeLessThanOrEqual(66);
    });
    it('with one pair of hands takes the sum of everything, which is proven to be the best', () => {
        const sum = ft06.flatMap(({ works }) => works).reduce((all, { machine }) => all + machine, 0);
        const book = bookSchedule(ft06, alone(1));
        expect([book.ready, book.least.ready]).toEqual([sum, sum]);
        expect(book.least.by).toBe('hands');
    });
});

describe('several orders on one bench', () => {
    it('fills the wait of one with work of another', () => {
        const glued: Order = { works: chain({ each: hour, wait: 5 * hour }, { each: hour }), pieces: 1 };
        const sanded: Order = { works: chain({ each: 4 * hour }), pieces: 1 };
        const book = bookSchedule([glued, sanded], alone());
        expect(book.ready).toBe(7 * hour);
        expect(book.least).toEqual({ ready: 7 * hour, by: { order: 0 } });
    });
    it('lets two makers use two lasers at once, and one laser only in turn', () => {
        const burn = (station: string): Order => ({ works: [work({ machine: hour, station })], pieces: 2 });
        expect(bookSchedule([burn('shed'), burn('loft')], alone(2)).ready).toBe(2 * hour);
        expect(bookSchedule([burn('shed'), burn('shed')], alone(2))).toMatchObject({
            ready: 4 * hour,
            least: { ready: 4 * hour, by: { station: 'shed' } },
        });
        expect(bookSchedule([burn('shed'), burn('loft')], alone(1)).ready).toBe(4 * hour);
    });
    it('sets up again where somebody else had the laser meanwhile', () => {
        const set = { setUp: hour, machine: hour, station: 'shed' };
        const book = bookSchedule([{ works: [work(set)], pieces: 2 }], alone(2));
        // One pair of hands goes on with what it has laid in.
        expect(book.turns.map(({ maker }) => maker)).toEqual([0, 0]);
        expect(book.ready).toBe(3 * hour);
    });
    it('does first what is due first, though something else takes longer', () => {
        const long: Order = { works: chain({ each: 5 * hour }), pieces: 1 };
        const soon: Order = { works: chain({ each: hour }), pieces: 1, due: hour };
        const book = bookSchedule([long, soon], alone());
        expect(book.readyOf).toEqual([6 * hour, hour]);
        expect(book.leastLate).toBe(0);
    });
    it('proves that something is late where the hours do not go round', () => {
        const order = (due: number): Order => ({ works: chain({ each: 5 * hour }), pieces: 1, due });
        const book = bookSchedule([order(8 * hour), order(8 * hour)], alone(1));
        expect(book.leastLate).toBe(2 * hour);
    });
    it('leaves out the days on which the shop is closed', () => {
        // From a Friday: Saturday and Sunday are closed.
        const hours = new WorkHours(8 * hour, (index) => index % 7 === 1 || index % 7 === 2);
        const bench = { makers: 1, hours };
        const book = bookSchedule([{ works: chain({ each: 5 * hour }), pieces: 3 }], bench);
        expect(book.turns.map(({ start }) => start / day)).toEqual([0, 3, 4]);
        checkValid(book, bench);
        expect(book.least.ready).toBe(3 * day + 7 * hour);
        // A wait goes on all the same.
        const wait = bookSchedule([{ works: chain({ each: hour, wait: day }, { each: hour }), pieces: 1 }], bench);
        expect(wait.ready).toBe(3 * day + hour);
        expect(new WorkHours(8 * hour, () => true).isOpen(0)).toBe(true);
    });

    const times = fc.integer({ min: 0, max: 4 });
    const station = fc.constantFrom(undefined, 'a', 'b');
    const worksOf = (most: number) =>
        fc
            .array(fc.record({ setUp: times, each: times, machine: times, wait: times, station, back: fc.boolean() }), {
                minLength: 1,
                maxLength: most,
            })
            .map((list) =>
                list.map(
                    ({ back, station: at, ...rest }, i): Work => ({
                        ...rest,
                        ...(at === undefined ? {} : { station: at }),
                        after: back && i > 0 ? [i - 1] : [],
                    }),
                ),
            );
    const ordersOf = (most: number, works: number, pieces: number) =>
        fc.array(
            fc
                .record({
                    works: worksOf(works),
                    pieces: fc.integer({ min: 1, max: pieces }),
                    due: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
                })
                .map(({ due, ...order }): Order => (due === undefined ? order : { ...order, due })),
            { minLength: 1, maxLength: most },
        );

    it('is valid and never better than its bound, with any orders, hands, hours and closed days', () => {
        fc.assert(
            fc.property(
                ordersOf(4, 4, 3),
                fc.integer({ min: 1, max: 3 }),
                fc.option(fc.integer({ min: 3, max: 20 })),
                fc.nat(6),
                (orders, makers, workday, closed) => {
                    const slow = orders.map((order) => ({
                        ...order,
                        works: order.works.map((one) => ({ ...one, each: one.each * hour, wait: one.wait * hour })),
                    }));
                    const hours = new WorkHours(workday === null ? undefined : workday * hour, (index) => index % 7 === closed);
                    const bench = { makers, hours };
                    const book = bookSchedule(slow, bench);
                    checkValid(book, bench);
                    const late = book.readyOf.map(
                        (ready, order) => ready - (book.orders[order]!.due ?? Number.POSITIVE_INFINITY),
                    );
                    expect(book.leastLate).toBeLessThanOrEqual(Math.max(0, ...late));
                    expect(bookSchedule(slow, bench)).toEqual(book);
                },
            ),
            { numRuns: 200 },
        );
    });

    it('of small cases: no order of doing things is better than the bound, and the schedule is near the best', () => {
        let excess = 0;
        let cases = 0;
        fc.assert(
            fc.property(ordersOf(3, 2, 1), fc.integer({ min: 1, max: 2 }), (orders, makers) => {
                const book = bookSchedule(orders, alone(makers));
                const best = bestOf(orders, makers);
                expect(book.least.ready).toBeLessThanOrEqual(best);
                expect(book.ready).toBeGreaterThanOrEqual(best);
                excess += best === 0 ? 0 : book.ready / best - 1;
                cases++;
            }),
            { numRuns: 300, seed: 7 },
        );
        expect(excess / cases).toBeLessThan(0.05);
    });
});

/** The shortest of all schedules that begin things in any order, each as soon as that order lets it; single pieces. */
function bestOf(orders: readonly Order[], makers: number): number {
    const all = orders.flatMap(({ works }, order) => works.map((one, index) => ({ ...one, order, index })));
    let best = Number.POSITIVE_INFINITY;
    const place = (
        left: readonly (typeof all)[number][],
        ready: ReadonlyMap<string, number>,
        hands: readonly number[],
        stations: ReadonlyMap<string, number>,
        end: number,
    ): void => {
        if (end >= best) return;
        if (left.length === 0) {
            best = end;
            return;
        }
        for (const one of left) {
            const befores = one.after.map((before) => ready.get(`${one.order} ${before}`));
            if (befores.includes(undefined)) continue;
            const from = Math.max(0, ...befores.map((time) => time!));
            const length = one.setUp + one.each + one.machine;
            const rest = left.filter((other) => other !== one);
            const goOn = (start: number, after: readonly number[]): void => {
                const over = start + length + one.wait;
                const busy = new Map(stations);
                if (one.station !== undefined && length > 0) busy.set(one.station, start + length);
                place(rest, new Map([...ready, [`${one.order} ${one.index}`, over]]), after, busy, Math.max(end, over));
            };
            if (length === 0) goOn(from, hands);
            else
                for (const [maker, free] of hands.entries()) {
                    const start = Math.max(from, free, one.station === undefined ? 0 : (stations.get(one.station) ?? 0));
                    goOn(start, hands.with(maker, start + length));
                }
        }
    };
    place(
        all,
        new Map(),
        Array.from({ length: makers }, () => 0),
        new Map(),
        0,
    );
    return best;
}
