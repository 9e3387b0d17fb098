import { beforeAll, describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { momentOf } from '../../shared/quantity/calendar';
import { makeWeek } from '../../shared/week/make-week';
import { type CountedStock, cutOffcuts, onHand } from '../../shared/week/on-hand';
import { weekText } from '../../shared/week/week-text';
import { planOf } from '../kit/plan-of';
import { flag } from '../kit/shop';

const start = momentOf('2026-12-01T08:00')!;
const sign = (make: number, width = 300): Promise<Plan> =>
    planOf(
        `laser shed { beam co2 power 45 W spot 0.15 mm field 600 x 400 mm top speed 600 mm/s acceleration 6000 mm/s2 }
board ash-10 { wood white-ash thickness 10 mm +- 0.2 mm sheet 1000 x 200 mm price 20 for 1 sheet }
finish oil { kind drying-oil spread 60 g/m2 price 20 for 0.5 l }
shop s { currency EUR }
recipe sign {
  laser shed
  make ${make}
  art flag "flag.svg"
  blank board { of ash-10 size ${width} x 180 mm grain along width }
  engrave mark on board { art flag power 60 % speed 300 mm/s passes 2 air off }
  finish board with oil { coats 2 }
  wait 24 h "the oil hardens"
}`,
        { 'flag.svg': flag },
    );
const board: CountedStock = {
    item: 'ash-10',
    kind: 'board',
    counted: '2026-11-20',
    amount: 2,
    by: 'sheets',
    offcuts: [{ width: 310, height: 190 }],
};

let seven: Plan;
let four: Plan;
beforeAll(async () => {
    [seven, four] = [await sign(7), await sign(4)];
});

function week(stock: readonly CountedStock[], spent: readonly { date: string; plan: Plan }[] = []) {
    return makeWeek([{ plan: seven }], { start, makers: 1, closed: [], stock }, spent, new Memo());
}

describe('what is on hand', () => {
    it('is taken off what has to be bought; without a count all is', () => {
        const [bare] = week([]).shopping;
        expect(bare).toMatchObject({ item: 'ash-10', amount: 3, buy: 3 });
        expect(bare).not.toHaveProperty('onHand');
        const [line] = week([{ ...board, offcuts: [] }]).shopping;
        expect(line).toMatchObject({ amount: 3, onHand: 2, buy: 1 });
        expect(line!.cost).toBeCloseTo(bare!.cost! / 3);
        expect(weekText(week([{ ...board, offcuts: [] }]))).toContain('Too little on hand: ash-10.');
    });

    it('offcuts come first, and spare a sheet', () => {
        const { cuttings, shopping } = week([board]);
        expect(cuttings).toMatchObject([{ offcuts: [{ laid: [{ name: 'sign board' }] }], yielded: { sheets: 2 } }]);
        expect(shopping[0]).toMatchObject({ amount: 2, onHand: 2, buy: 0 });
        expect(weekText(week([board]))).toContain('offcut of 310 mm x 190 mm: 1 sign board');
        // Nobody has counted the sheets.
        const { amount: _amount, ...uncounted } = board;
        expect(week([uncounted]).shopping[0]).not.toHaveProperty('onHand');
        expect(week([uncounted]).shopping[0]).toMatchObject({ amount: 2, buy: 2 });
        // Its grain runs across: no blank may lie on it.
        const across = week([{ ...board, offcuts: [{ width: 310, height: 190, grain: 'height' }] }]);
        expect(across.cuttings).toMatchObject([{ offcuts: [], yielded: { sheets: 3 } }]);
    });

    it('runs after the day of the count have used some of it up, runs of that day and before none', () => {
        const late = [{ date: '2026-11-21', plan: four }];
        // Four signs: one out of the offcut, three out of a sheet of which 8 % are left.
        expect(week([board], late).shopping[0]).toMatchObject({ amount: 3, onHand: 1, buy: 2 });
        expect(week([board], [{ date: '2026-11-20', plan: four }]).shopping[0]).toMatchObject({ amount: 2, onHand: 2, buy: 0 });
    });

    it('what is left of the last sheet is an offcut', async () => {
        const one = [{ date: '2026-11-21', plan: await sign(1) }];
        const { cuttings } = week([{ ...board, offcuts: [] }], one);
        expect(cuttings[0]!.offcuts).toMatchObject([{ laid: [{}, {}] }]);
        expect(cuttings[0]!.offcuts[0]!.offcut.width).toBeCloseTo(697);
    });

    it('fluids by mass or by volume, by their density; where it is not known nothing is taken off', () => {
        const need = week([]).shopping.find(({ item }) => item === 'oil')!.amount;
        const oil: CountedStock = { ...board, item: 'oil', kind: 'finish', by: 'volume', amount: 10_000, offcuts: [] };
        const line = (stock: CountedStock) => week([stock]).shopping.find(({ item }) => item === 'oil')!;
        expect(line({ ...oil, density: 9e-4 })).toMatchObject({ onHand: 9, buy: need - 9 });
        expect(line(oil)).toMatchObject({ buy: need });
        expect(line({ ...oil, by: 'mass', amount: 1e6 })).toMatchObject({ buy: 0, cost: 0 });
    });

    it('is never less than nothing, however much later runs took', () => {
        const oil: CountedStock = { ...board, item: 'oil', kind: 'finish', by: 'mass', amount: 0.1, density: 9e-4, offcuts: [] };
        const spent = [{ date: '2026-11-21', plan: four }];
        const need = week([]).shopping.find(({ item }) => item === 'oil')!.amount;
        expect(week([oil], spent).shopping.find(({ item }) => item === 'oil')).toMatchObject({ onHand: 0, buy: need });
    });

    it.each([
        [300, 1],
        [320, 0],
    ])(
        'of three blanks %i mm long side by side on 1000 mm leaves %i offcuts: nobody keeps a small end',
        async (width, offcuts) => {
            const spent = [{ date: '2026-11-21', plan: await sign(3, width) }];
            expect(onHand([{ ...board, offcuts: [] }], spent).get('board ash-10')!.rack).toMatchObject({
                sheets: 1,
                offcuts: { length: offcuts },
            });
        },
    );
});

it('of several offcuts the smallest that holds something goes first, and no blank is lost', () => {
    const pieces = [{ name: 'a', width: 100, height: 50, count: 5, grain: 'width' as const }];
    const offcuts = [
        { width: 400, height: 60 },
        { width: 90, height: 60 },
        { width: 120, height: 60 },
    ];
    const { used, whole, left } = cutOffcuts(offcuts, pieces, 3);
    expect(used.map(({ offcut, laid }) => [offcut.width, laid.length])).toEqual([
        [120, 1],
        [400, 3],
    ]);
    expect(whole).toEqual([{ width: 90, height: 60 }]);
    expect(left).toMatchObject([{ name: 'a', count: 1 }]);
});
