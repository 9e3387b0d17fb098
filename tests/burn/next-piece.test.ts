import { describe, expect, it } from 'vitest';
import { pieceSpread } from '../../shared/burn/piece-spread';
import { burnPieces } from './next-piece';

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
