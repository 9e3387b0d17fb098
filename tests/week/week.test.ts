import { beforeAll, describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { momentOf } from '../../shared/quantity/calendar';
import { makeWeek, type WeekAsked } from '../../shared/week/make-week';
import { weekText } from '../../shared/week/week-text';
import { planOf } from '../kit/plan-of';
import { flag } from '../kit/shop';

const rack = `
shop slip { currency EUR hourly 30 workday 8 h }
laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
laser loft { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board ash-10 { wood white-ash  thickness 10 mm  moisture 8 %  sheet 1000 x 200 mm  price 10 for 1 sheet }
finish oil { kind drying-oil dry 24 h price 20 for 500 g }
`;
const plaque = (name: string, make: number, laser = 'shed', width = 240): string => `${rack}
recipe ${name} "${name}" {
  make ${make} laser ${laser}
  art flag "flag.svg"
  blank board { of ash-10 size ${width} x 180 mm grain along width }
  engrave mark on board { art flag power 60 % speed 300 mm/s passes 2 air off }
  sand board { take 0.1 mm grits 120, 180 }
  finish board with oil { coats 2 }
  wait 24 h "the oil hardens"
}`;
const art = { 'flag.svg': flag };
const asked: WeekAsked = { start: momentOf('2026-12-01T08:00')!, makers: 1, closed: [0, 6], stock: [] };
const week = (plans: readonly (Plan | { plan: Plan; due?: string; for?: string })[], more: Partial<WeekAsked> = {}) =>
    makeWeek(
        plans.map((each) => ('plan' in each ? each : { plan: each })),
        { ...asked, ...more },
        [],
        new Memo(),
    );

let north: Plan;
let south: Plan;
beforeAll(async () => {
    north = await planOf(plaque('north', 3), art);
    south = await planOf(plaque('south', 3, 'loft'), art);
});

describe('a week over several recipes', () => {
    it('gives one pair of hands one thing at a time, on open days and in their hours', () => {
        const { sittings, attended } = week([north, south]);
        const jobs = sittings.flatMap((sitting) => sitting.jobs);
        expect(jobs.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(attended, 6);
        for (const [index, job] of jobs.slice(1).entries())
            expect(job.start).toBeGreaterThanOrEqual(jobs[index]!.start + jobs[index]!.length - 1e-6);
        for (const { start, end } of sittings) {
            const day = new Date(start * 1000).getUTCDay();
            expect([0, 6]).not.toContain(day);
            expect(new Date(end * 1000).toISOString().slice(11, 16) <= '16:00').toBe(true);
        }
        expect(new Set(jobs.map(({ recipe }) => recipe))).toEqual(new Set(['north', 'south']));
    });
    it('works on one while the coat of the other dries, and takes as many hours as both by themselves', () => {
        const both = week([north, south]);
        expect(both.ready - both.start).toBeLessThan(north.schedule.ready + south.schedule.ready);
        expect(both.attended).toBeCloseTo(north.schedule.attended + south.schedule.attended, 6);
    });
    it('says what no plan can beat', () => {
        const { least, ready, gap, start } = week([north, south]);
        expect(least.ready).toBeLessThanOrEqual(ready);
        expect(gap).toBeCloseTo((ready - start) / (least.ready - start) - 1, 9);
    });
    it('one order alone is the schedule of its recipe', () => {
        const { ready, attended } = week([north], { closed: [] });
        expect(ready - asked.start).toBeCloseTo(north.schedule.ready, 3);
        expect(attended).toBe(north.schedule.attended);
    });
    it('cuts the sheets for all together: fewer than each by itself', () => {
        const { cuttings, shopping } = week([north, south]);
        const apart = [...north.cuttings, ...south.cuttings].reduce((sum, { yielded }) => sum + yielded.sheets, 0);
        expect(cuttings).toHaveLength(1);
        // Four of 240 mm lie beside each other on 1000 mm.
        expect([apart, cuttings[0]!.yielded.sheets]).toEqual([2, 2]);
        const [small, large] = [north, south].map((plan) => ({ ...plan, recipe: { ...plan.recipe, make: 2 } }));
        expect(week([small!, large!]).cuttings[0]!.yielded.sheets).toBe(1);
        expect(shopping.filter(({ item }) => item === 'ash-10')).toMatchObject([
            { amount: 2, buy: 2, unit: 'sheets', recipes: ['north', 'south'] },
        ]);
    });
    it('buys each thing once', () => {
        const { shopping } = week([north, south]);
        const keys = shopping.map(({ item, unit }) => `${item} ${unit}`);
        expect(new Set(keys).size).toBe(keys.length);
        const oil = [north, south].flatMap(({ supplies }) => supplies.filter(({ item }) => item === 'oil'));
        const bought = shopping.find(({ item }) => item === 'oil')!;
        expect(bought.amount).toBeCloseTo(
            oil.reduce((sum, { amount }) => sum + amount, 0),
            9,
        );
        expect(bought.cost).toBeCloseTo(
            oil.reduce((sum, { cost }) => sum + cost!, 0),
            9,
        );
    });
});

describe('what is late, and why', () => {
    it('nothing is where there is time', () => {
        const { orders, leastLate } = week([{ plan: north, due: '2026-12-31' }]);
        expect(orders[0]!.late).toBeUndefined();
        expect(leastLate).toBe(0);
    });
    it('what takes longer by itself had to be begun sooner, and no plan helps', () => {
        const { orders, leastLate } = week([{ plan: north, due: '2026-12-02' }]);
        expect(orders[0]).toMatchObject({ late: expect.any(Number), why: expect.stringMatching(/even with nothing else/) });
        expect(leastLate).toBeGreaterThan(0);
        expect(leastLate).toBeLessThanOrEqual(orders[0]!.late!);
    });
    it('what is more than the hands can do by then says so, and what helps', async () => {
        const many = await planOf(plaque('many', 200), art);
        const { orders } = week([{ plan: many, due: '2026-12-05' }]);
        expect(orders[0]!.why).toMatch(/the hands have no more hours.*Another pair of hands/);
        const four = week([{ plan: many, due: '2026-12-31' }], { makers: 4 });
        expect(four.ready).toBeLessThan(week([many]).ready);
    });
    it('what is due first goes first, whatever comes first in the files', () => {
        const due = week([{ plan: south }, { plan: north, due: '2026-12-04' }]);
        expect(due.orders[0]).toMatchObject({ recipe: 'north' });
        expect(due.orders[0]!.late).toBeUndefined();
    });
    it('stands at the head of the text, with its number', () => {
        const text = weekText(week([{ plan: north, due: '2026-12-02', for: 'the ferry' }, south]));
        const lines = text.split('\n');
        expect(lines[0]).toBe(
            'From Tue 1 Dec 2026, 08:00: 2 orders, 6 pieces. 1 pair of hands, 8 h a day, closed on Sunday and Saturday.',
        );
        expect(lines.slice(0, 8).join('\n')).toMatch(/1 order is late\. In every plan something is at least .* late\./);
        expect(text).toMatch(/^ {2}3 north for the ferry, due 2026-12-02, is ready on .*: it takes until /m);
        expect(text).not.toContain('undefined');
    });
});

it('thousands of pieces are laid out in lots, all of them', async () => {
    const many = await planOf(plaque('many', 5000), art);
    const { coarse, attended, sittings } = week([many]);
    expect(coarse).toBe(true);
    expect(attended).toBeGreaterThan(0.95 * many.schedule.attended);
    expect(sittings.length).toBeGreaterThan(100);
});
