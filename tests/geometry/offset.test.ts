import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract, unite } from '../../shared/geometry/boolean';
import { distanceToEdge } from '../../shared/geometry/distance';
import { area, contains, perimeter, vertexCount } from '../../shared/geometry/measure';
import { grow } from '../../shared/geometry/offset';
import { emptyRegion } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { rotate } from '../../shared/geometry/transform';
import { island, regions, seeded } from './shapes-at-random';

const square = rectangle(0, 0, 1000, 1000);

describe('a square of 1000', () => {
    test('by +100', () => {
        expect(area(grow(square, 100, 'miter'))).toBe(1_440_000);
        expect(area(grow(square, 100, 'bevel'))).toBe(1_000_000 + 400_000 + 4 * 5000);
        expect(area(grow(square, 100, 'round')) / (1_400_000 + Math.PI * 10_000)).toBeCloseTo(1, 5);
    });

    test('by -100, whatever the join', () => {
        for (const join of ['round', 'miter', 'bevel'] as const) expect(area(grow(square, -100, join))).toBe(640_000);
    });

    test('to nothing', () => {
        expect(grow(square, -500).rings).toEqual([]);
        expect(grow(square, -501).rings).toEqual([]);
        expect(area(grow(square, -499.5))).toBeCloseTo(1, 6);
    });
});

describe('rings and holes', () => {
    const ring = subtract(circle(0, 0, 20, 1e-4), circle(0, 0, 10, 1e-4));

    test('both edges move', () => {
        expect(area(grow(ring, 1)) / (Math.PI * (121 - 16))).toBeCloseTo(1, 3);
        expect(area(grow(ring, -1)) / (Math.PI * (81 - 36))).toBeCloseTo(1, 3);
    });

    test('a hole closes, a ring vanishes', () => {
        expect(grow(ring, 5.1).rings.length).toBe(1);
        expect(grow(ring, -2.6).rings).toEqual([]);
    });

    test('islands meet', () => {
        const two = unite([Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4), Float64Array.of(5, 0, 9, 0, 9, 4, 5, 4)]);
        expect(grow(two, 0.49).rings.length).toBe(2);
        expect(grow(two, 0.51).rings.length).toBe(1);
    });
});

describe('any region', () => {
    test('holds exactly the points nearer than the distance', () => {
        const random = seeded(31);
        let looked = 0;
        for (let run = 0; run < 120; run++) {
            const region =
                run % 2 === 0
                    ? unite([island(25, 25, 24, 20 + Math.floor(random() * 400), random)])
                    : unite(
                          [
                              Float64Array.from({ length: 14 }, () => random() * 50),
                              Float64Array.from({ length: 8 }, () => random() * 50),
                          ],
                          'evenodd',
                      );
            const delta = (random() - 0.5) * [0.05, 0.5, 4, 20][run % 4]!;
            const grown = grow(region, delta);
            for (let k = 0; k < 120; k++) {
                const x = random() * 70 - 10;
                const y = random() * 70 - 10;
                const depth = distanceToEdge(region, x, y) * (contains(region, x, y) ? 1 : -1);
                if (Math.abs(depth + delta) < 0.006) continue;
                looked++;
                expect(contains(grown, x, y)).toBe(depth > -delta);
            }
        }
        expect(looked).toBeGreaterThan(10_000);
    });

    test('keeps its size when turned', () => {
        fc.assert(
            fc.property(
                regions(),
                fc.double({ min: -3, max: 3, noNaN: true }),
                fc.double({ min: 0, max: 6.3, noNaN: true }),
                (region, delta, angle) => {
                    const slack = 0.012 * (1 + perimeter(region) + perimeter(grow(region, delta)));
                    expect(Math.abs(area(grow(rotate(region, angle), delta)) - area(grow(region, delta)))).toBeLessThan(slack);
                },
            ),
            { numRuns: 100, seed: 32 },
        );
    });

    test('shrinking what was grown leaves no less than there was', () => {
        fc.assert(
            fc.property(regions(), fc.double({ min: 0.01, max: 3, noNaN: true }), (region, delta) => {
                const closed = grow(grow(region, delta), -delta);
                expect(area(subtract(region, grow(closed, 0.02)))).toBeLessThan(1e-3);
            }),
            { numRuns: 60, seed: 33 },
        );
    });

    test('a sliver thinner than the tolerance grows like any other', () => {
        const sliver = unite([Float64Array.of(0, 0, 0.0007, 0, 0, 20)]);
        expect(area(grow(sliver, 0.5)) / (20 + Math.PI / 4)).toBeCloseTo(1, 2);
    });

    test('gains no points worth mentioning', () => {
        const coast = unite([island(150, 150, 140, 20_000, seeded(3))]);
        for (const delta of [-0.05, 0.05]) expect(vertexCount(grow(coast, delta))).toBeLessThan(vertexCount(coast));
    });
});

describe('numbers that make no sense', () => {
    test('leave the region, or nothing, and never throw', () => {
        expect(grow(square, Number.NaN)).toBe(square);
        expect(grow(square, Number.POSITIVE_INFINITY)).toBe(square);
        expect(grow(square, 0)).toBe(square);
        expect(grow(emptyRegion, 5).rings).toEqual([]);
        expect(grow(square, -1e308).rings).toEqual([]);
        expect(area(grow(square, 1e308))).toBeGreaterThan(0);
        expect(area(grow(square, 1, 'round', Number.NaN))).toBeGreaterThan(1_000_000);
        expect(area(grow(square, 1, 'round', 0))).toBeGreaterThan(1_000_000);
    });
});
