import { describe, expect, it } from 'vitest';
import { bent, depthOf, doseFor, type LawNumbers, passesWorth } from '../../shared/burn/dose';
import { fitRows } from '../../shared/burn/fit';
import { lawOfRest } from '../../shared/burn/go-on';
import { guessLaw } from '../../shared/burn/guess';
import { bendSlope, type DepthLaw, depthSlopes, predictDose } from '../../shared/burn/law';
import { bell } from './stock';

const squares = [
    [0.3, 400, 1],
    [0.4, 400, 1],
    [0.5, 350, 1],
    [0.6, 300, 1],
    [0.7, 300, 1],
    [0.8, 250, 1],
    [0.9, 250, 1],
    [0.9, 200, 1],
    [0.8, 300, 2],
    [0.8, 250, 2],
    [0.7, 300, 3],
    [0.6, 300, 4],
    [0.8, 250, 3],
    [0.7, 300, 5],
] as const;
const guess = guessLaw(undefined, undefined);
const woods = {
    straight: { threshold: 0.15, energy: 3, fade: 0.95 },
    shielding: { threshold: 0.15, energy: 2.4, fade: 0.97, bend: 2.5 },
    'first unlike': { threshold: 0.15, energy: 2.6, fade: 0.75, laterAlike: true },
} as const satisfies Record<string, LawNumbers>;

/** Squares of a wood, places differing by 1.5 %, read to hundredths. */
function fitOf(wood: LawNumbers, seed: number): DepthLaw {
    const roll = bell(seed * 7 + 1);
    const rows = squares.map(([ratio, speed, passes]) => {
        const depth = depthOf(wood, (45 * ratio) / (speed * 0.1), passes) * (1 + 0.015 * roll()) + 0.007 * roll();
        return { power: 45 * ratio, speed, pitch: 0.1, passes, depth: Math.max(0, Math.round(100 * depth) / 100), tolerance: 0 };
    });
    return fitRows(rows, guess);
}

const formOf = ({ notes }: DepthLaw): string => notes.find((note) => note === 'bent' || note === 'first-unlike') ?? 'straight';
const seeds = Array.from({ length: 60 }, (_, seed) => seed + 1);

describe('the form of a depth law', () => {
    it('is chosen by what it says of squares that are left out, and rarely other than the wood', () => {
        const share = (wood: LawNumbers, form: string): number =>
            seeds.filter((seed) => formOf(fitOf(wood, seed)) === form).length / seeds.length;
        expect(share(woods.straight, 'straight')).toBeGreaterThan(0.9);
        expect(share(woods.shielding, 'bent')).toBeGreaterThan(0.8);
        expect(share(woods['first unlike'], 'first-unlike')).toBeGreaterThan(0.3);
    });

    it('holds new squares of woods that no straight line follows, and comes near them', () => {
        for (const wood of [woods.shielding, woods['first unlike']]) {
            let [held, squared, count] = [0, 0, 0];
            for (const seed of seeds) {
                const law = fitOf(wood, seed);
                for (const [dose, passes] of [
                    [1.2, 1],
                    [1, 2],
                    [1.1, 3],
                ] as const) {
                    const truth = depthOf(wood, dose, passes);
                    const { value, low, high } = predictDose(law, dose, passes)!;
                    if (truth >= low && truth <= high) held++;
                    squared += (value / truth - 1) ** 2;
                    count++;
                }
            }
            expect(held / count).toBeGreaterThan(0.95);
            expect(Math.sqrt(squared / count)).toBeLessThan(0.04);
        }
    });

    it('keeps the straight one among its rivals, and widens where they part', () => {
        const law = fitOf(woods.shielding, 3);
        expect(formOf(law)).toBe('bent');
        expect(law.rivals!.length).toBeGreaterThan(0);
        const { rivals: _, bending: __, ...certain } = law;
        const half = (of: DepthLaw, dose: number): number => {
            const { low, high } = predictDose(of, dose, 1)!;
            return (high - low) / 2;
        };
        expect(half(law, 3) / half(certain, 3)).toBeGreaterThan(half(law, 1) / half(certain, 1));
        expect(half(law, 3)).toBeGreaterThan(1.1 * half(certain, 3));
    });

    it('holds what lies beyond the squares of woods that bend too little to be seen', () => {
        for (const bend of [0, 0.3, 0.6, 0.9]) {
            const wood: LawNumbers = { ...woods.straight, ...(bend > 0 && { bend }) };
            let [held, count, widened] = [0, 0, 0];
            for (const seed of seeds) {
                const law = fitOf(wood, seed);
                for (const [dose, passes] of [
                    [2.4, 1],
                    [2.8, 1],
                    [3, 2],
                ] as const) {
                    const truth = depthOf(wood, dose, passes);
                    const { value, low, high } = predictDose(law, dose, passes)!;
                    if (truth >= low && truth <= high) held++;
                    widened += (high - low) / 2 / value / 3 / seeds.length;
                    count++;
                }
            }
            expect(held / count).toBeGreaterThan(0.93);
            expect(widened).toBeLessThan(0.2);
        }
    });

    it('knows no dose for a pass deeper than one part in its bend, and the dose for every other', () => {
        for (const wood of Object.values(woods) as LawNumbers[])
            for (const depth of [0.01, 0.2, 0.35]) expect(depthOf(wood, doseFor(wood, depth, 1), 1)).toBeCloseTo(depth, 9);
        expect(doseFor(woods.shielding, 0.41, 1)).toBe(Number.POSITIVE_INFINITY);
        expect(bent({ bend: 2.5 }, 100)).toBeCloseTo(0.4, 9);
        expect(passesWorth(woods['first unlike'], 4)).toBeCloseTo(1 + 3 * 0.75, 9);
    });

    it('goes on after some passes as all of them together (own derivation)', () => {
        for (const wood of Object.values(woods) as LawNumbers[]) {
            const law = { ...fitOf(woods.straight, 1), bend: undefined, laterAlike: undefined, ...wood } as unknown as DepthLaw;
            const rest = lawOfRest(law, 2);
            for (const passes of [1, 3])
                expect(depthOf(rest, 1.1, passes)).toBeCloseTo(depthOf(law, 1.1, 2 + passes) - depthOf(law, 1.1, 2), 9);
        }
    });

    it('has the slopes of its differences', () => {
        for (const wood of Object.values(woods) as LawNumbers[]) {
            const slopes = depthSlopes(wood, 1.1, 3);
            const step = 1e-6;
            for (const [i, name] of (['threshold', 'energy', 'fade'] as const).entries()) {
                const at = (more: number): number => depthOf({ ...wood, [name]: wood[name] + more }, 1.1, 3);
                expect(slopes[i]! / ((at(step) - at(-step)) / (2 * step))).toBeCloseTo(1, 5);
            }
            const bend = wood.bend ?? 1e-9;
            const at = (more: number): number => depthOf({ ...wood, bend: bend + more }, 1.1, 3);
            expect(bendSlope({ ...wood, bend }, 1.1, 3) / ((at(1e-4) - at(-1e-4)) / 2e-4)).toBeCloseTo(1, 3);
        }
    });
});
