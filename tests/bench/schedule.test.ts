import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Schedule, schedule } from '../../shared/bench/schedule';
import type { Work } from '../../shared/bench/work';

const hour = 3600;
const work = (part: Partial<Work>): Work => ({ setUp: 0, each: 0, machine: 0, wait: 0, after: [], ...part });
const chain = (...parts: Partial<Work>[]): Work[] => parts.map((part, i) => work({ after: i === 0 ? [] : [i - 1], ...part }));

describe('schedule', () => {
    it('one piece takes the sum of everything', () => {
        const plan = schedule(chain({ each: hour }, { machine: 2 * hour }, { wait: 24 * hour }, { each: hour }), 1);
        expect(plan).toMatchObject({ ready: 28 * hour, attended: 4 * hour, idle: 24 * hour, scaled: false });
    });
    it('the waits of all pieces run while the hands are on the others', () => {
        // Each piece: 1 h of filling, 12 h of cure, 1 h of sanding. Four pieces: 4 h, then the first waits until hour 13.
        const plan = schedule(chain({ each: hour, wait: 12 * hour }, { each: hour }), 4);
        expect(plan.ready).toBe(17 * hour);
        expect(plan.turns.filter((turn) => turn.work === 1).map((turn) => turn.start / hour)).toEqual([13, 14, 15, 16]);
    });
    it('sets up once for a run of the same step', () => {
        const plan = schedule(chain({ setUp: hour, each: hour }, { setUp: hour, each: hour }), 3);
        expect(plan.ready).toBe(8 * hour);
    });
    it('works on another blank of the same piece while the first waits', () => {
        // 0 glue and wait 10 h; 1 a second blank, 3 h; 2 needs both.
        const plan = schedule(
            [work({ each: hour, wait: 10 * hour }), work({ each: 3 * hour }), work({ each: hour, after: [0, 1] })],
            1,
        );
        expect(plan.ready).toBe(12 * hour);
    });
    it('keeps to the hours of the day, and lets waits run overnight', () => {
        const plan = schedule(chain({ each: 5 * hour, wait: 12 * hour }, { each: 5 * hour }), 1, 8 * hour);
        expect(plan.turns.map((turn) => turn.start / hour)).toEqual([0, 24]);
        // Two pieces: 5 h do not fit twice into a day of 8 h.
        const two = schedule(chain({ each: 5 * hour }), 2, 8 * hour);
        expect(two.turns.map((turn) => turn.start / hour)).toEqual([0, 24]);
    });
    it('begins a work longer than the day in the morning', () => {
        const plan = schedule(chain({ each: hour }, { each: 10 * hour }), 1, 8 * hour);
        expect(plan.turns[1]).toMatchObject({ start: 24 * hour, end: 34 * hour });
    });
    it('scales a run of many pieces by the pace of the hands', () => {
        const plan = schedule(chain({ each: 60 }), 1_000_000);
        expect(plan.scaled).toBe(true);
        expect(plan.ready).toBe(60_000_000);
        expect(plan.turns.length).toBeLessThanOrEqual(200);
    });
    it('counts in what it does not lay out the set-ups of batches, and the nights', () => {
        const works = chain({ setUp: 600, batch: 10, each: 60 });
        const [half, whole] = [schedule(works, 200), schedule(works, 400)];
        // A minute each, and a tenth of ten minutes.
        expect(whole.attended - half.attended).toBeCloseTo(200 * 120, 6);
        expect(whole.ready - half.ready).toBeCloseTo(200 * 120, 6);
        const byDay = schedule(works, 400, 8 * hour).ready - schedule(works, 200, 8 * hour).ready;
        expect(byDay).toBeCloseTo(3 * 200 * 120, 6);
    });
    const order = (works: Work[], pieces: number) => schedule(works, pieces).turns.map((turn) => `${turn.work}.${turn.piece}`);
    it('does first what has most still to follow', () => {
        expect(order([work({ each: hour }), work({ each: 5 * hour })], 1)).toEqual(['1.0', '0.0']);
        expect(order([work({ each: 5 * hour }), work({ each: hour })], 1)).toEqual(['0.0', '1.0']);
    });
    it('of what is alike, what is set up already; then the earlier step, and the earlier piece', () => {
        expect(order([work({ each: hour }), work({ each: hour })], 2)).toEqual(['0.0', '0.1', '1.0', '1.1']);
        const drying = [
            work({ each: hour, wait: 3 * hour }),
            work({ each: hour, setUp: hour, after: [0] }),
            work({ each: hour, setUp: hour }),
        ];
        // At 4 h the first piece is dry and the second work is set up: it is finished first.
        expect(order(drying, 2)).toEqual(['0.0', '0.1', '2.0', '2.1', '1.0', '1.1']);
    });
    it('takes a workday of nothing, or of a whole day and more, for day and night', () => {
        const nights = chain({ each: 20 * hour }, { each: 20 * hour });
        for (const workday of [undefined, 0, -1, Number.NaN, 24 * hour, 30 * hour])
            expect(schedule(nights, 1, workday).ready).toBe(40 * hour);
    });
    it('takes a batch of less than one piece for none', () => {
        const batch = (size: number | undefined) =>
            schedule([work({ setUp: hour, each: hour, ...(size !== undefined && { batch: size }) })], 4).ready;
        expect(batch(2)).toBe(6 * hour);
        expect([batch(undefined), batch(0), batch(0.5), batch(Number.NaN)]).toEqual([5, 5, 5, 5].map((each) => each * hour));
        expect(schedule([work({ each: hour })], Number.POSITIVE_INFINITY)).toMatchObject({ turns: [], ready: 0 });
        expect(schedule([work({ each: hour })], 0.5)).toMatchObject({ turns: [], ready: 0 });
    });
    it('figures that are none count as nothing', () => {
        const odd = [work({ each: Number.NaN, wait: Number.POSITIVE_INFINITY }), work({ each: -5, after: [7, -1, 1] })];
        expect(schedule(odd, 2).turns).toHaveLength(4);
        expect(schedule(odd, Number.NaN)).toMatchObject({ turns: [], ready: 0 });
        expect(schedule([], 5)).toMatchObject({ turns: [], ready: 0, idle: 0 });
    });

    const times = fc.integer({ min: 0, max: 20 });
    const works = fc
        .array(
            fc.record({ setUp: times, each: times, machine: times, wait: times, back: fc.array(fc.nat(5), { maxLength: 2 }) }),
            { minLength: 1, maxLength: 6 },
        )
        .map((list) =>
            list.map(
                ({ back, ...rest }, i): Work => ({
                    ...rest,
                    after: back.map((by) => i - 1 - by).filter((before) => before >= 0),
                }),
            ),
        );

    it('never has two things in hand, never before what it builds on, and does everything once', () => {
        fc.assert(
            fc.property(
                works,
                fc.integer({ min: 1, max: 5 }),
                fc.option(fc.integer({ min: 1, max: 12 })),
                (list, pieces, hours) => {
                    const plan = schedule(list, pieces, hours === null ? undefined : hours * hour);
                    expect(plan.turns).toHaveLength(list.length * pieces);
                    checkBuildsOn(plan, list);
                    const inHand = plan.turns.filter((turn) => turn.end > turn.start).sort((a, b) => a.start - b.start);
                    for (const [i, turn] of inHand.slice(1).entries()) expect(turn.start).toBeGreaterThanOrEqual(inHand[i]!.end);
                    expect(plan.ready).toBeLessThanOrEqual(serial(list, pieces) + 86_400 * list.length * pieces);
                    expect(schedule(list, pieces, hours === null ? undefined : hours * hour)).toEqual(plan);
                },
            ),
            { numRuns: 150 },
        );
    });
    it('is never slower than one piece after the other', () => {
        fc.assert(
            fc.property(works, fc.integer({ min: 1, max: 5 }), (list, pieces) => {
                expect(schedule(list, pieces).ready).toBeLessThanOrEqual(serial(list, pieces));
            }),
        );
    });
});

function checkBuildsOn(plan: Schedule, list: readonly Work[]): void {
    const ready = new Map(plan.turns.map((turn) => [`${turn.piece} ${turn.work}`, turn.ready]));
    expect(ready.size).toBe(plan.turns.length);
    for (const turn of plan.turns) {
        for (const before of list[turn.work]!.after) {
            expect(turn.start).toBeGreaterThanOrEqual(ready.get(`${turn.piece} ${before}`)!);
        }
    }
}

function serial(list: readonly Work[], pieces: number): number {
    return pieces * list.reduce((sum, { setUp, each, machine, wait }) => sum + setUp + each + machine + wait, 0);
}
