import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract } from '../../shared/geometry/boolean';
import { area, bounds, centroid, perimeter } from '../../shared/geometry/measure';
import { rectangle } from '../../shared/geometry/shapes';
import {
    identity,
    invert,
    type Matrix,
    mirror,
    multiply,
    rotate,
    rotation,
    transform,
    translate,
    translation,
} from '../../shared/geometry/transform';
import { regions } from './shapes-at-random';

const frame = subtract(rectangle(0, 0, 10, 6), rectangle(1, 1, 2, 2));
const number = fc.double({ min: -100, max: 100, noNaN: true });
const matrices: fc.Arbitrary<Matrix> = fc.record({ a: number, b: number, c: number, d: number, e: number, f: number });

describe('matrices', () => {
    test('nest as SVG nests them: the inner one first', () => {
        const outer = translation(10, 0);
        const inner = { ...identity, a: 2, d: 2 };
        expect(transform(rectangle(1, 1, 1, 1), multiply(outer, inner)).rings[0]).toEqual(
            Float64Array.of(12, 2, 14, 2, 14, 4, 12, 4),
        );
    });

    test('a quarter turn takes right to down, since y points down', () => {
        const { x, y } = centroid(rotate(rectangle(9, -1, 2, 2), Math.PI / 2))!;
        expect([x, y].map((value) => Math.round(value * 1e9) / 1e9 + 0)).toEqual([0, 10]);
        expect(centroid(rotate(frame, 1, 3, 4))!.x).toBeCloseTo(
            centroid(transform(frame, multiply(translation(3, 4), multiply(rotation(1), translation(-3, -4)))))!.x,
            9,
        );
    });

    test('there and back is where it was', () => {
        fc.assert(
            fc.property(matrices, (matrix) => {
                const back = invert(matrix);
                fc.pre(back !== undefined && Math.abs(matrix.a * matrix.d - matrix.b * matrix.c) > 1);
                const both = multiply(back!, matrix);
                for (const key of ['a', 'b', 'c', 'd', 'e', 'f'] as const) expect(both[key]).toBeCloseTo(identity[key], 6);
            }),
        );
        expect(invert({ a: 1, b: 2, c: 2, d: 4, e: 0, f: 0 })).toBeUndefined();
        expect(invert({ a: Number.NaN, b: 0, c: 0, d: 1, e: 0, f: 0 })).toBeUndefined();
    });
});

describe('regions', () => {
    test('mirroring twice is nothing', () => {
        fc.assert(
            fc.property(regions(), number, (region, about) => {
                const twice = mirror(mirror(region, about), about);
                expect(twice.rings.length).toBe(region.rings.length);
                for (let i = 0; i < region.rings.length; i++) {
                    for (let k = 0; k < region.rings[i]!.length; k++)
                        expect(twice.rings[i]![k]).toBeCloseTo(region.rings[i]![k]!, 9);
                }
            }),
            { numRuns: 50 },
        );
    });

    test('mirroring keeps outer rings positive and holes negative', () => {
        const turned = mirror(frame, 50);
        expect(area(turned)).toBe(area(frame));
        expect(turned.rings.length).toBe(2);
        expect(bounds(turned)).toEqual({ minX: 90, minY: 0, maxX: 100, maxY: 6 });
        expect(area(subtract(turned, rectangle(90, 0, 5, 6)))).toBe(26);
    });

    test('area goes with the determinant', () => {
        fc.assert(
            fc.property(regions(), matrices, (region, matrix) => {
                const factor = Math.abs(matrix.a * matrix.d - matrix.b * matrix.c);
                fc.pre(factor > 0);
                const expected = area(region) * factor;
                expect(Math.abs(area(transform(region, matrix)) - expected)).toBeLessThan(1e-6 * (1 + expected));
            }),
            { numRuns: 200 },
        );
    });

    test('turning and moving change neither area nor edge', () => {
        fc.assert(
            fc.property(regions(), number, number, number, (region, angle, x, y) => {
                const moved = translate(rotate(region, angle, x, y), y, x);
                expect(area(moved)).toBeCloseTo(area(region), 6);
                expect(perimeter(moved)).toBeCloseTo(perimeter(region), 6);
            }),
            { numRuns: 100 },
        );
    });

    test('a matrix that flattens or is not finite leaves nothing', () => {
        expect(transform(frame, { ...identity, a: 0 }).rings).toEqual([]);
        expect(transform(frame, { ...identity, a: Number.NaN }).rings).toEqual([]);
        expect(transform(frame, { ...identity, e: Number.POSITIVE_INFINITY }).rings).toEqual([]);
        expect(transform(frame, { ...identity, a: 1e308, d: 1e308 }).rings).toEqual([]);
    });
});
