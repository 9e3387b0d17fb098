import { describe, expect, it } from 'vitest';
import { depthOf } from '../../shared/burn/dose';
import { predict, predictOnBoard } from '../../shared/burn/law';
import { lawOfDay } from '../../shared/burn/law-of-day';
import { pieceSpread } from '../../shared/burn/piece-spread';
import { pitch, readDepth, scatter, simulatedCoupon } from '../kit/simulated-coupon';
import { burnPieces } from './next-piece';
import { bell, shed } from './stock';

// More of them, and runs of eight pieces, are at the command line: npm run simulate -- pieces.
const seeds = Array.from({ length: 800 }, (_, at) => at + 1);

describe('the range of the next piece', () => {
    it.each([0, 0.05, 0.1, 0.15])('holds 95 of 100 where the stock says that boards differ by %d', (boards) => {
        const { covered, half, needed } = burnPieces(boards, boards, seeds);
        expect(covered).toBeGreaterThan(0.93);
        expect(covered).toBeLessThan(0.975);
        expect(half / needed).toBeLessThan(1.3);
    });

    it.each([0, 0.05, 0.1])('holds 90 of 100 with what is usual where they really differ by %d', (boards) => {
        expect(burnPieces(boards, undefined, seeds).covered).toBeGreaterThan(0.9);
    });

    it.each([0.1, 0.15])('holds as many after four pieces that differed by %d, which nobody said', (boards) => {
        const { covered, half, needed } = burnPieces(boards, undefined, seeds, 4);
        expect(covered).toBeGreaterThan(0.92);
        expect(half / needed).toBeLessThan(1.3);
    });
});

describe('what pieces differ by', () => {
    const day = (at: number, logFactor: number) => ({
        date: `2026-03-0${at + 1}`,
        day: 100 + at,
        logFactor,
        error: 0.03,
        rounding: 0.003,
        rows: 1,
    });
    const far = [0.2, -0.2, 0.25, -0.15].map((logFactor, at) => day(at, logFactor));

    it('is as declared, whatever runs say', () => {
        expect(pieceSpread(0.05, far)).toMatchObject({ from: 'declared', boards: 0.05 });
        expect(pieceSpread(0, []).sigma).toBeCloseTo(0.02, 12);
    });

    it('is the usual one, and says so, until four days of runs tell', () => {
        expect(pieceSpread(undefined, far.slice(1))).toMatchObject({ from: 'usual', boards: 0.08 });
        const learned = pieceSpread(undefined, far);
        expect(learned).toMatchObject({ from: 'runs', days: 4, freedom: 5 });
        expect(learned.sigma).toBeGreaterThan(0.15);
        const alike = pieceSpread(
            undefined,
            far.map((each) => ({ ...each, logFactor: 0.1 })),
        );
        expect(alike.sigma).toBeLessThan(0.06);
    });
});

describe('three kinds of a range', () => {
    it('hold one more square, and the mean of a pocket, on the board that was measured', () => {
        const truth = { threshold: 0.15, energy: 3, fade: 0.96 };
        let [square, pocket, wider] = [0, 0, 0];
        const seeds = Array.from({ length: 400 }, (_, i) => i + 1);
        for (const seed of seeds) {
            const roll = bell(seed * 19 + 7);
            const read = (depth: number): number => readDepth(depth, roll, { ...scatter, gauge: 0.01, least: 0.01 });
            const law = lawOfDay(
                simulatedCoupon((dose, passes) => read(depthOf(truth, dose, passes))),
                shed,
                undefined,
                [],
            );
            const set = { power: 36, speed: 320, pitch, passes: 3 };
            const depth = depthOf(truth, 36 / (320 * pitch), 3);
            const within = (mm: number, of: 'square' | 'pocket'): number => {
                const { low, high } = predictOnBoard(law, set, of)!;
                return mm >= low && mm <= high ? 1 : 0;
            };
            square += within(read(depth), 'square');
            pocket += within(depth, 'pocket');
            const half = (range: { low: number; high: number }): number => range.high - range.low;
            const [mean, one, next] = [
                predictOnBoard(law, set, 'pocket')!,
                predictOnBoard(law, set, 'square')!,
                predict(law, set)!,
            ];
            if (half(mean) < half(one) && half(one) < half(next)) wider++;
        }
        expect(wider).toBe(seeds.length);
        expect(square / seeds.length).toBeGreaterThan(0.93);
        expect(pocket / seeds.length).toBeGreaterThan(0.93);
    });
});
