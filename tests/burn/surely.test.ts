import { describe, expect, it } from 'vitest';
import { doseFor } from '../../shared/burn/dose';
import { fitCoupon } from '../../shared/burn/fit';
import { guessLaw } from '../../shared/burn/guess';
import { predict } from '../../shared/burn/law';
import { isSure, solveDepth } from '../../shared/burn/solve';
import { sureDose } from '../../shared/burn/surely';
import { burn, couponOf, shed, woodOf } from './stock';
import { burnVeneers } from './veneers';

const law = fitCoupon(
    couponOf([
        burn(0.4, 400, 1, 0.07),
        burn(0.55, 350, 1, 0.15),
        burn(0.6, 300, 1, 0.2),
        burn(0.75, 300, 1, 0.27),
        burn(0.8, 250, 1, 0.37),
        burn(0.9, 250, 1, 0.42),
        burn(0.7, 300, 2, 0.49),
        burn(0.5, 300, 3, 0.47),
    ]),
    shed,
);

describe('a depth that is to be surely reached', () => {
    it('has the low end of the interval at it', () => {
        const dose = sureDose(law, 0.63, 3, 0.975)!;
        const depth = predict(law, { power: dose, speed: 1, pitch: 1, passes: 3 })!;
        expect(depth.low).toBeCloseTo(0.63, 6);
        expect(depth.value).toBeGreaterThan(0.66);
        expect(sureDose(law, 0.63, 3, 0.99)!).toBeGreaterThan(dose);
        expect(sureDose(law, 0.63, 3, 0.5)!).toBeCloseTo(doseFor(law, 0.63, 3), 6);
    });

    it('is solved so that rounding takes nothing away', () => {
        for (const depth of [0.3, 0.45, 0.63, 0.9]) {
            const wish = { depth, sure: 0.975 };
            const solved = solveDepth(law, shed, wish)!;
            expect(isSure(solved.surely!, wish.depth)).toBe(true);
            expect(solved.reached).toBe(true);
            expect(solveDepth(law, shed, wish, { speed: 300 })!.surely).toBeGreaterThan(depth * 0.998);
        }
    });

    it('is not bought with char where nothing was measured: the median is burnt, and it says so', () => {
        const guess = guessLaw(woodOf(600e-6), shed);
        const solved = solveDepth(guess, shed, { depth: 0.63, sure: 0.975 }, { passes: 3 })!;
        expect(solved.limits).toContain('unsure');
        expect(solved.dose).toBeCloseTo(doseFor(guess, 0.63, 3), 2);
        expect(solved.surely).toBeLessThan(0.4);
    });

    it('says what written settings surely give', () => {
        const wish = { depth: 0.63, sure: 0.975 };
        const median = solveDepth(law, shed, { depth: 0.63 }, { passes: 3 })!;
        const written = { power: median.power, speed: median.speed, pitch: median.pitch, passes: 3 };
        const solved = solveDepth(law, shed, wish, written)!;
        expect(solved.reached).toBe(true);
        expect(isSure(solved.surely!, wish.depth)).toBe(false);
    });
});

/** What a maker finds on the foil; `npm run simulate -- through` prints it for any seeds. */
describe('veneers burnt through, each by a coupon of its own', () => {
    const seeds = Array.from({ length: 700 }, (_, i) => 1 + i);

    it('kept a skin in every third where the median met the thick end, and hardly ever now', () => {
        const before = burnVeneers(seeds, undefined);
        const now = burnVeneers(seeds, 0.975);
        expect(before.thickest).toBeGreaterThan(0.4);
        expect(now.thickest).toBeLessThan(0.03);
        expect(now.asBought).toBeLessThan(0.01);
        expect(now.refused).toBeLessThan(0.02);
        expect(now.time).toBeLessThan(1.3);
    });
});
