import { describe, expect, it } from 'vitest';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const lots = shop.replace(
    'thickness 12 mm +- 0.3 mm  moisture 8 % }',
    `thickness 12 mm +- 0.3 mm  moisture 8 %  sheet 600 x 200 mm
  lot spring { bought 2026-03-14  thickness 11.8 mm +- 0.1 mm }
  lot autumn { moisture 10 % }
}`,
);

function planned(blanks: string, runs = '') {
    return planOf(`${lots}
recipe r {
  laser shed
  art flag "flag.svg"
  ${blanks}
  engrave pocket on tray { art flag  depth 0.5 mm  air off }
}
${runs}`);
}

describe('a lot of a board', () => {
    it('is planned with what was measured in it, and with the board’s own figures where it says nothing', async () => {
        const plan = await planned(
            'blank tray { of walnut-12 lot spring  size 90 x 60 mm }\nblank lid { of walnut-12 lot autumn  size 90 x 60 mm }',
        );
        const [tray, lid] = plan.blanks.map(({ blank }) => blank.sheet);
        expect([tray?.thickness?.value, tray?.thickness?.tolerance, tray?.moisture?.value]).toEqual([11.8, 0.1, 0.08]);
        expect(tray?.bought?.value).toBe('2026-03-14');
        expect([lid?.thickness?.value, lid?.moisture?.value, lid?.bought]).toEqual([12, 0.1, undefined]);
        // Two lots are two piles in the rack; the coupon is the board's.
        expect(plan.supplies.map(({ item }) => item).slice(0, 2)).toEqual(['walnut-12 lot spring', 'walnut-12 lot autumn']);
        expect(plan.steps[0]?.laser?.settings?.guess).toBe(false);
    });

    it('is not told of by runs of another lot', async () => {
        const run = (lot: string) =>
            `run r 2026-11-20 { issue 1  laser shed  pocket of walnut-12${lot} 60 % at 300 mm/s depth 0.24 mm }`;
        const measured = async (lot: string) =>
            (await planned('blank tray { of walnut-12 lot spring  size 90 x 60 mm }', run(lot))).recipe.measured.length;
        expect(await Promise.all(['', ' lot spring', ' lot autumn'].map(measured))).toEqual([1, 1, 0]);
    });
});
