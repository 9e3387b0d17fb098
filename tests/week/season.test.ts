import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../shared/plan/plan';
import { makeSeason, type SeasonEntry } from '../../shared/week/season';
import { seasonCsv, seasonRows, seasonText } from '../../shared/week/season-words';
import { planOf } from '../kit/plan-of';
import { flag } from '../kit/shop';

const plaque = (make: number): string => `
shop slip { currency EUR hourly 30 }
laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board ash-10 { wood white-ash  thickness 10 mm  moisture 8 %  sheet 1000 x 200 mm  price 10 for 1 sheet }
recipe plaque "Plaque" {
  make ${make} laser shed
  art flag "flag.svg"
  blank board { of ash-10 size 240 x 180 mm grain along width }
  engrave mark on board { art flag power 60 % speed 300 mm/s passes 2 air off }
}`;
let three: Plan;
let five: Plan;
beforeAll(async () => {
    three = await planOf(plaque(3), { 'flag.svg': flag });
    five = await planOf(plaque(5), { 'flag.svg': flag });
});
const entry = (plan: Plan | undefined, more: Partial<SeasonEntry> = {}): SeasonEntry => ({
    recipe: 'plaque',
    title: 'Plaque',
    date: '2026-10-01',
    ...(plan === undefined ? {} : { plan }),
    ...more,
});

describe('a season', () => {
    it('sums what runs made, spoiled and took, with what was planned for the same pieces', () => {
        const { total, recipes, from, to, currency } = makeSeason([
            entry(three, { made: 2, spoiled: 1, took: 3600 }),
            entry(five, { made: 5, spoiled: 0, date: '2026-11-20' }),
        ]);
        expect(total).toMatchObject({ runs: 2, uncounted: 0, made: 7, spoiled: 1, took: 3600 });
        expect(total.planned).toBeCloseTo(three.schedule.attended + five.schedule.attended, 6);
        expect(total.plannedOfTook).toBeCloseTo(three.schedule.attended, 6);
        expect(total.cost).toBeCloseTo(three.cost!.total + five.cost!.total, 6);
        expect(recipes).toMatchObject([{ recipe: 'plaque', made: 7 }]);
        expect([from, to, currency]).toEqual(['2026-10-01', '2026-11-20', 'EUR']);
    });
    it('leaves runs that do not say what came of them out of every sum, and says so', () => {
        const season = makeSeason([entry(three, { made: 3 }), entry(undefined, { took: 9999 })]);
        expect(season.total).toMatchObject({ runs: 2, uncounted: 1, made: 3, took: 0 });
        // Nothing is known of it: that is no cost of nothing.
        expect(makeSeason([entry(undefined)]).total).not.toHaveProperty('cost');
        const [only] = seasonRows(makeSeason([entry(undefined, {})]));
        expect(only!.slice(1, 4)).toEqual(['1', '', '']);
        expect(seasonText(season)).toMatch(/1 run does not say what came of it: write `made` in it\./);
    });
    it('says who made how much', () => {
        const { makers } = makeSeason([
            entry(three, { made: 3, by: 'Ida', took: 600 }),
            entry(three, { made: 2, spoiled: 1, by: 'Ida' }),
            entry(three, { made: 3, by: 'Per' }),
        ]);
        expect(makers).toEqual([
            { by: 'Ida', made: 5, took: 600 },
            { by: 'Per', made: 3, took: 0 },
        ]);
    });
    it('tells a cost only where it is known of all that was begun', () => {
        const { cost: _cost, ...free } = five;
        expect(makeSeason([entry(three, { made: 3 }), entry(free, { made: 5 })]).total.cost).toBeUndefined();
    });
    it('sets the hours that were taken into the cost in place of those planned, and shares it out over the good pieces', () => {
        const { total } = makeSeason([entry(three, { made: 2, spoiled: 1, took: 5400 }), entry(three, { made: 3 })]);
        const { materials, machine, total: planned } = three.cost!;
        expect(total.cost).toBeCloseTo(2 * planned, 6);
        expect(total.realCost).toBeCloseTo(materials + machine + 1.5 * 30 + planned, 6);
        expect(total.realEach).toBeCloseTo(total.realCost! / 5, 6);
        expect(makeSeason([entry(three, { made: 3 })]).total).not.toHaveProperty('realCost');
    });
    it('is a table of text, and one for a spreadsheet', () => {
        const season = makeSeason([entry(three, { made: 2, spoiled: 1, took: 5400 })]);
        expect(seasonText(season)).toMatch(/2 pieces made, 1 spoiled \(33\.3 % of what was begun\)\.\n\nrecipe +runs +made/);
        expect(seasonText(season)).toMatch(/^plaque +1 +2 +1 +.*1 h 30 min +\d+ % +[\d.]+ EUR +[\d.]+ EUR +[\d.]+ EUR$/m);
        const [head, row] = seasonCsv(season).split('\r\n');
        expect(head).toMatch(/^recipe,title,runs,uncounted,made,spoiled,/);
        expect(row).toMatch(/^plaque,Plaque,1,0,2,1,[\d.]+,1\.5,[\d.]+,[\d.]+,[\d.]+,EUR$/);
    });
});
