import { describe, expect, it } from 'vitest';
import { asideAtEdge, offBetween } from '../../shared/plan/laid-aside';
import { Memo } from '../../shared/plan/memo';
import { setUps } from '../../shared/plan/set-ups';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { planOf } from '../kit/plan-of';
import { coupon, inlayRecipe, shop } from '../kit/shop';

const burn = (name: string, x: number) => `engrave ${name} on slab { circle 4 mm at ${x}, 30 mm depth 0.5 mm air off }`;

describe('set-ups that may be off', () => {
    it('add up what each may be off back to the one that both were found from', async () => {
        const plan = await planOf(`${shop} recipe slab "Slab" { revision 1 laser shed
          blank slab { of walnut-12 size 100 x 80 mm grain along width }
          ${burn('crosses', 5)} do "lay it" { found by marks of crosses within 0.3 mm }
          ${burn('b', 15)} do "lay it" { found by marks of crosses within 0.1 mm }
          ${burn('c', 25)} do "lay it" { found by fence within 0.2 mm }
          ${burn('d', 35)} do "weigh it" { taken off } ${burn('e', 45)} do "lay it" { found by fence within 0.05 mm } ${burn('f', 55)} }`);
        const all = setUps(plan);
        const off = (a: number, b: number) => offBetween(all[a - 1]!, all[b - 1]!, all);
        expect(off(1, 1)).toBe(0);
        expect(off(1, 2)).toBeCloseTo(0.3, 12);
        expect(off(2, 3)).toBeCloseTo(0.4, 12);
        expect(off(1, 4)).toBeCloseTo(0.3, 12);
        expect(off(4, 2)).toBeCloseTo(0.6, 12);
        expect(off(5, 6)).toBeCloseTo(0.05, 12);
        // Nobody says how it was laid for e.
        expect(off(4, 5)).toBeUndefined();
        expect(off(1, 6)).toBeUndefined();
    });

    it('take half of it at each edge, as trying all places of a part in a pocket that was burnt twice finds', () => {
        const [width, gap] = [20, 0.15];
        const step = 0.001;
        for (const moved of [0, 0.05, 0.12, 0.28, 0.296, 0.304, 0.4]) {
            // The floor is where both burns went, the mouth where either did; the part may be pushed anywhere.
            const floor = [Math.max(0, moved), Math.min(width, width + moved)] as const;
            const mouth = [Math.min(0, moved), Math.max(width, width + moved)] as const;
            let least = Number.POSITIVE_INFINITY;
            for (let shift = -1; shift <= 1; shift += step) {
                const [left, right] = [gap + shift, width - gap + shift];
                if (left < floor[0] - step / 2 || right > floor[1] + step / 2) continue;
                least = Math.min(least, Math.max(left - mouth[0], mouth[1] - right));
            }
            const edge = asideAtEdge({ most: moved });
            expect(Number.isFinite(least), `${moved}`).toBe(edge <= gap);
            if (Number.isFinite(least)) expect(Math.abs(least - (gap + edge))).toBeLessThan(2 * step);
        }
    });

    it('are in the facts of the inlay and in the plan’s JSON', async () => {
        const again = 'engrave rest on tray { art flag depth 0.25 mm air off }';
        const text = inlayRecipe({ pocket: 'art flag depth 0.30 mm air off' }).replace(
            'engrave relief',
            `do "measure it" { found by pins within 0.02 mm } ${again}\n  engrave relief`,
        );
        const plan = await planOf(
            text.replace(
                'resin tide-blue',
                `${coupon('maple-06', 'shed', 'burn 80 % at 300 mm/s x 3 gives 1.00 mm\n')}\nresin tide-blue`,
            ),
        );
        const { files } = buildSheets(plan, [], new Memo());
        expect(files.find(({ path }) => path === 'job-sheet.html')!.text).toContain(
            'up to 0.01 mm more, as far as set-ups may be off',
        );
        expect(files.find(({ path }) => path === 'plan.json')!.text).toContain('"aside": 0.02');
    });
});
