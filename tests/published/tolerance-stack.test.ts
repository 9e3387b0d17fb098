/** Tolerance stacks. Root of squares: GUM, JCGM 100:2008, example H.1 (from memory). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inlayStack } from '../../shared/bench/stack';
import { add, type Interval, rootSumSquare, spread, subtract } from '../../shared/quantity/interval';

const within = (value: number, tolerance: number): Interval => ({ value, low: value - tolerance, high: value + tolerance });
const stack = (...tolerances: number[]): Interval =>
    rootSumSquare(tolerances.map((tolerance) => ({ of: within(0, tolerance), sign: 1 }) as const));

describe('GUM H.1, end gauge (from memory)', () => {
    it('25, 9.7, 2.9 and 16.6 nm make 32 nm', () => {
        const combined = spread(stack(25, 9.7, 2.9, 16.6));
        expect(combined).toBeCloseTo(31.671, 3);
        expect(Math.round(combined)).toBe(32);
    });
    it('its inner sum of 5.8, 3.9 and 6.7 nm makes 9.7 nm', () => expect(spread(stack(5.8, 3.9, 6.7))).toBeCloseTo(9.682, 3));
});

describe('computed from the formulas', () => {
    const parts = [0.05, 0.03, 0.02, 0.04];
    it('worst case is the plain sum', () => {
        const worst = parts.map((tolerance) => within(1, tolerance)).reduce(add);
        expect(worst.value).toBe(4);
        expect(spread(worst)).toBeCloseTo(0.14, 12);
    });
    it('root of squares', () => expect(spread(stack(...parts))).toBeCloseTo(0.0734847, 7));
    it('subtracting stacks as adding does', () => {
        expect(spread(subtract(within(5, 0.3), within(2, 0.1)))).toBeCloseTo(0.4, 12);
        expect(
            spread(
                rootSumSquare([
                    { of: within(5, 0.3), sign: 1 },
                    { of: within(2, 0.1), sign: -1 },
                ]),
            ),
        ).toBeCloseTo(Math.hypot(0.3, 0.1), 12);
    });
    it('of an uneven interval each side counts by itself, and changes sides when it is taken off', () => {
        const uneven = { value: 1, low: 0.5, high: 1.1 };
        const sum = rootSumSquare([
            { of: uneven, sign: 1 },
            { of: uneven, sign: -1 },
        ]);
        expect(sum.high).toBeCloseTo(Math.hypot(0.1, 0.5), 12);
        expect(sum.low).toBeCloseTo(-Math.hypot(0.1, 0.5), 12);
        expect(rootSumSquare([{ of: uneven, sign: -1 }])).toMatchObject({ value: -1, low: -1.1, high: -0.5 });
    });
    it('the expected range never reaches past the worst case, whatever the parts', () => {
        const part = fc
            .tuple(
                fc.double({ min: -5, max: 5, noNaN: true }),
                fc.double({ min: 0, max: 3, noNaN: true }),
                fc.double({ min: 0, max: 3, noNaN: true }),
            )
            .map(([value, down, up]) => ({ value, low: value - down, high: value + up }));
        fc.assert(
            fc.property(part, part, part, part, (veneer, depth, film, below) => {
                for (const { likely, worst } of Object.values(inlayStack(veneer, depth, film, below))) {
                    expect(likely.low).toBeGreaterThanOrEqual(worst.low - 1e-12);
                    expect(likely.high).toBeLessThanOrEqual(worst.high + 1e-12);
                }
            }),
        );
    });
});

describe('the stack of an inlay', () => {
    // 0.60 of veneer in 0.55 of pocket on 0.06 of film, 0.10 sanded off: sums a person can do.
    const made = inlayStack(within(0.6, 0.02), within(0.55, 0.05), within(0.06, 0.02), within(0.1, 0));
    it('stands proud by veneer - (depth - film)', () => {
        expect(made.proud.worst.value).toBeCloseTo(0.11, 12);
        expect(made.proud.worst.high).toBeCloseTo(0.62 - (0.5 - 0.08), 12);
        expect(spread(made.proud.likely)).toBeCloseTo(Math.hypot(0.02, 0.05, 0.02), 12);
    });
    it('keeps depth - film - sanded', () => {
        expect(made.left.worst.value).toBeCloseTo(0.39, 12);
        expect(made.left.worst.low).toBeCloseTo(0.5 - 0.08 - 0.1, 12);
        expect(spread(made.left.likely)).toBeCloseTo(Math.hypot(0.05, 0.02), 12);
    });
    it('never keeps more than the veneer, nor less than nothing', () => {
        expect(inlayStack(within(0.6, 0), within(2, 0), within(0, 0), within(0, 0)).left.worst.value).toBeCloseTo(0.6, 12);
        expect(inlayStack(within(0.6, 0), within(0.2, 0), within(0.1, 0), within(1, 0)).left.worst.low).toBe(0);
    });
});
