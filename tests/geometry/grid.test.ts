import fc from 'fast-check';
import { expect, test } from 'vitest';
import { unite } from '../../shared/geometry/boolean';
import { farthest, fromGrid, toGrid } from '../../shared/geometry/grid';
import { area, bounds } from '../../shared/geometry/measure';
import { latticeRings } from './shapes-at-random';

const ring = (...numbers: number[]) => Float64Array.from(numbers);

test('whole units, a tenth of a micrometre each', () => {
    expect(toGrid(ring(0, 0, 1, 0, 0.00006, 1.23456))).toEqual(ring(0, 0, 10_000, 0, 1, 12_346));
    expect(fromGrid([15, -20_000])).toEqual(ring(0.0015, -2));
    expect(Object.is(toGrid(ring(-0.00001, 0, 1, 0, 0, 1))![0], 0)).toBe(true);
});

test('there and back gives the same units', () => {
    fc.assert(
        fc.property(fc.integer({ min: -9e8, max: 9e8 }), fc.integer({ min: -9e8, max: 9e8 }), (x, y) => {
            const units = ring(x, y, x + 5, y, x, y + 5);
            expect(toGrid(fromGrid(units))).toEqual(units);
        }),
    );
});

test('repeated and straight points and spikes go', () => {
    expect(toGrid(ring(0, 0, 0, 0, 5, 0, 10, 0, 10, 10, 10, 10, 0, 10, 0, 0))).toEqual(
        ring(0, 0, 10 * 1e4, 0, 10 * 1e4, 10 * 1e4, 0, 10 * 1e4),
    );
    expect(toGrid(ring(90, 85, 80, 85, 85, 85, 90, 20))?.length).toBe(6);
    expect(toGrid(ring(5, 0, 10, 0, 10, 10, 0, 10, 0, 0))?.length).toBe(8);
    expect(toGrid(ring(0, 0, 10, 0, 10, 10, 20, 10, 10, 10, 10, 0))).toBeUndefined();
    for (const nothing of [ring(), ring(1, 1), ring(1, 1, 2, 2), ring(1, 1, 1, 1, 1, 1), ring(0, 0, 1, 1, 2, 2)])
        expect(toGrid(nothing)).toBeUndefined();
});

test('no three points in a row are straight, across the seam too', () => {
    fc.assert(
        fc.property(latticeRings(4), (rings) => {
            for (const each of rings) {
                const units = toGrid(each);
                if (units === undefined) continue;
                const n = units.length;
                for (let i = 0; i < n; i += 2) {
                    const [ax, ay, bx, by, cx, cy] = [0, 1, 2, 3, 4, 5].map((k) => units[(i + k) % n]!);
                    expect((bx! - ax!) * (cy! - by!) === (by! - ay!) * (cx! - bx!)).toBe(false);
                }
            }
        }),
        { numRuns: 1000, seed: 71 },
    );
});

test('what is not finite is left out, what is too far is pulled back', () => {
    expect(area(unite([ring(0, 0, 10, 0, Number.NaN, 3, 10, 10, 0, 10, Number.POSITIVE_INFINITY, 0)]))).toBe(100);
    const region = unite([ring(0, 0, 1e308, 0, 1e308, 1e308, 0, 10)]);
    expect(bounds(region)).toEqual({ minX: 0, minY: 0, maxX: farthest, maxY: farthest });
    expect(unite([ring(Number.NaN, Number.NaN, Number.NaN, 1, 2, 3)]).rings).toEqual([]);
});

test('any numbers at all give a region', () => {
    fc.assert(
        fc.property(
            fc.array(fc.float64Array({ maxLength: 20 }), { maxLength: 4 }),
            fc.constantFrom('nonzero' as const, 'evenodd' as const),
            (rings, rule) => {
                expect(area(unite(rings, rule))).toBeGreaterThanOrEqual(0);
            },
        ),
        { numRuns: 500, seed: 72 },
    );
});
