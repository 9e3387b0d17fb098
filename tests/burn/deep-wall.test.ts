import { describe, expect, it } from 'vitest';
import { depthByShare } from '../../shared/bench/half-edge';
import { deepLean } from '../../shared/burn/deep-wall';
import { normalCumulative } from '../../shared/burn/distributions';
import { doseFor, doseOf } from '../../shared/burn/dose';
import { guessLaw } from '../../shared/burn/guess';
import { wallInset, wallOf } from '../../shared/burn/wall';
import type { MeasuredPocket } from '../../shared/recipe/run';

const law = { threshold: 0.2, energy: 2, fade: 1 };
const sigma = 0.0375;
const lean = 0.08;

/** A pocket that was burnt `depth` deep by one pass, with a wall that leans by a tangent below 1.5 mm; width read with an error, mm. */
function pocket(depth: number, tangent = lean, error = 0): MeasuredPocket {
    const dose = doseFor(law, depth, 1);
    const settings = { power: dose * 100 * 0.1, speed: 100, pitch: 0.1, passes: 1 };
    const ofBeam = wallInset(wallOf(law, doseOf(settings), sigma, 1)!.profile, depth);
    return {
        ...settings,
        depth,
        tolerance: 0,
        wall: { width: ofBeam + tangent * Math.max(0, depth - 1.5) + error, reading: 0.01 },
        recipe: 'trial',
        step: 'berth',
        date: '2026-11-02',
        laser: 'shed',
        sheet: 'oak-14',
        where: { uri: 'trial.kerf', offset: 0, length: 0 },
    };
}

describe('the lean of walls deeper than the beam tells', () => {
    const of = (pockets: MeasuredPocket[]) => deepLean(pockets, { ...guessLaw(undefined, undefined), ...law }, sigma);

    it('is found again in walls that were made with one', () => {
        const found = of([pocket(2.2), pocket(2.8), pocket(4)]);
        expect(found.walls).toBe(3);
        expect(found.lean.value).toBeCloseTo(lean, 3);
        expect(found.lean.low).toBeLessThan(lean);
    });
    it('covers the next wall in 93 to 98 of a hundred trials, from four measured ones', () => {
        let seed = 7;
        const chance = (): number => {
            seed = (seed * 1664525 + 1013904223) % 4294967296;
            return (seed + 0.5) / 4294967296;
        };
        const normal = (): number => Math.sqrt(-2 * Math.log(chance())) * Math.cos(2 * Math.PI * chance());
        let covered = 0;
        const trials = 2000;
        for (let n = 0; n < trials; n++) {
            const measured = Array.from({ length: 4 }, () => pocket(2.8, lean + 0.015 * normal(), 0.01 * normal()));
            const { low, high } = of(measured).lean;
            const next = lean + 0.015 * normal();
            if (next >= low && next <= high) covered++;
        }
        expect(covered / trials).toBeGreaterThan(0.93);
        expect(covered / trials).toBeLessThan(0.985);
    });
    it('is a usual one, with a range that grows with depth, where none was measured below 2 mm', () => {
        for (const none of [[], [pocket(1.4), pocket(1.8)]]) {
            const { lean: usual, walls } = of(none);
            expect(walls).toBe(0);
            const widthAt = (depth: number, deep: number) =>
                wallInset(wallOf(law, doseFor(law, depth, 1), sigma, 1, undefined, deep)!.profile, depth);
            const rangeAt = (depth: number) => widthAt(depth, usual.high) - widthAt(depth, usual.low);
            expect(rangeAt(1.5)).toBe(0);
            expect(rangeAt(2.8)).toBeCloseTo(1.3 * (usual.high - usual.low), 9);
            expect(rangeAt(4)).toBeGreaterThan(1.9 * rangeAt(2.8));
        }
    });
    it('makes a wall of 2.8 mm lean more than the 2 degrees of the beam’s width', () => {
        const degrees = (deep: number) => (wallOf(law, doseFor(law, 2.8, 1), sigma, 1, undefined, deep)!.taper * 180) / Math.PI;
        expect(degrees(0)).toBeCloseTo(2, 0);
        expect(degrees(0.05)).toBeGreaterThan(3);
    });
    it('is the same in the press as in the fit: a place as deep lies as far inside', () => {
        const depth = 2.8;
        const dose = doseFor(law, depth, 1);
        const { profile, growth } = wallOf(law, dose, sigma, 1, undefined, 0.05)!;
        const { at } = depthByShare({ law, dose, passes: 1, sigma, deep: 0.05 });
        for (const deep of [0.5, 1.4, 1.6, 2, 2.4, 2.7]) {
            const x = wallInset(profile, deep) - growth;
            expect(at(normalCumulative(x / sigma)), `at ${deep}`).toBeCloseTo(deep, 1);
        }
        expect(at(1)).toBeCloseTo(depth, 6);
    });
});
