import { describe, expect, it } from 'vitest';
import { couponSheet } from '../../shared/burn/coupon-sheet';
import { depthOf, doseOf, type LawNumbers, type Settings } from '../../shared/burn/dose';
import { fitRows } from '../../shared/burn/fit';
import { guessLaw } from '../../shared/burn/guess';
import { measuringError } from '../../shared/burn/law';
import { solveDepth } from '../../shared/burn/solve';
import { bell, shed, woodOf } from './stock';

/*
 * What a coupon tells of the decay of passes: unknown woods are burnt and measured with the usual error, the law is fitted,
 * and a millimetre is solved from it and burnt. Beside it stands the same with a layout whose repeated squares are its four gentlest.
 */

const wood = woodOf(600e-6);
const guess = guessLaw(wood, shed);
const COUPONS = 120;

/** From the ends of what the guess from density holds for likely. */
const woods: readonly LawNumbers[] = [
    { threshold: 0.08, energy: 3.08, fade: 0.9 },
    { threshold: 0.15, energy: 5, fade: 0.9 },
    { threshold: 0.05, energy: 2, fade: 0.85 },
    { threshold: 0.1, energy: 3, fade: 1 },
];

const ladder: readonly Settings[] = (() => {
    const { squares, pitch } = couponSheet(shed, wood)!;
    return squares.map(({ power, speed, passes }) => ({ power, speed, pitch, passes }));
})();

const repeatedGently: readonly Settings[] = [
    { speed: 590, passes: 1 },
    { speed: 410, passes: 1 },
    { speed: 290, passes: 1 },
    { speed: 200, passes: 1 },
    { speed: 590, passes: 3 },
].flatMap((row) => [0.18, 0.42, 0.66, 0.9].map((part) => ({ ...row, power: 45 * part, pitch: 0.08 })));

interface Outcome {
    /** Root mean square (mm) of what comes out at a wish for 1 mm, less that. */
    readonly off: number;
    readonly mean: number;
    /** Standard deviation of the fitted fade. */
    readonly fade: number;
    readonly covered: number;
}

function simulate(truth: LawNumbers, squares: readonly Settings[]): Outcome {
    const offs: number[] = [];
    const fades: number[] = [];
    let covered = 0;
    for (let seed = 1; seed <= COUPONS; seed++) {
        const random = bell(seed * 7 + 1);
        const rows = squares.map((settings) => {
            const depth = depthOf(truth, doseOf(settings), settings.passes);
            const read = depth + measuringError(depth, 0.02) * random();
            return { ...settings, depth: Math.max(0, Math.round(read * 100) / 100), tolerance: 0 };
        });
        const law = fitRows(rows, guess);
        const solved = solveDepth(law, shed, { depth: 1 })!;
        const burnt = depthOf(truth, doseOf(solved), solved.passes);
        offs.push(burnt - 1);
        fades.push(law.fade);
        if (burnt >= solved.depth.low && burnt <= solved.depth.high) covered++;
    }
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    const square = (values: readonly number[]) => Math.sqrt(mean(values.map((value) => value ** 2)));
    const middle = mean(fades);
    return { off: square(offs), mean: mean(offs), fade: square(fades.map((fade) => fade - middle)), covered: covered / COUPONS };
}

describe('the decay of passes', () => {
    it.each(woods)(
        'is known well enough by the ladder that a millimetre comes out as one, and better than with more squares: %j',
        (truth) => {
            const ours = simulate(truth, ladder);
            expect(ours.off).toBeLessThan(0.065);
            expect(Math.abs(ours.mean)).toBeLessThan(0.015);
            expect(ours.fade).toBeLessThan(0.055);
            expect(ours.covered).toBeGreaterThan(0.93);
            expect(ladder.length).toBeLessThan(repeatedGently.length);
            const theirs = simulate(truth, repeatedGently);
            expect(ours.off / theirs.off).toBeLessThan(0.85);
            expect(ours.fade / theirs.fade).toBeLessThan(0.95);
        },
    );
});
