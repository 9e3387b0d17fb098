import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract, unite } from '../../shared/geometry/boolean';
import { depthInside, distanceToEdge, edgeDistance, margin } from '../../shared/geometry/distance';
import {
    area,
    bounds,
    centroid,
    contains,
    isEmpty,
    perimeter,
    signedArea,
    vertexCount,
    windingOf,
} from '../../shared/geometry/measure';
import { emptyRegion } from '../../shared/geometry/region';
import { chordAngle, circle, rectangle } from '../../shared/geometry/shapes';
import { translate } from '../../shared/geometry/transform';
import { regions } from './shapes-at-random';

const square = rectangle(2, 3, 10, 4);
const framed = subtract(rectangle(0, 0, 10, 10), rectangle(2, 2, 4, 4));

describe('exact shapes', () => {
    test('a rectangle', () => {
        expect(area(square)).toBe(40);
        expect(perimeter(square)).toBe(28);
        expect(bounds(square)).toEqual({ minX: 2, minY: 3, maxX: 12, maxY: 7 });
        expect(centroid(square)).toEqual({ x: 7, y: 5 });
        expect(vertexCount(square)).toBe(4);
    });

    test('a frame', () => {
        expect(area(framed)).toBe(84);
        expect(perimeter(framed)).toBe(56);
        // Middle of the whole less that of the hole: (100·5 − 16·4) / 84.
        expect(centroid(framed)!.x).toBeCloseTo((500 - 64) / 84, 12);
        expect([contains(framed, 1, 1), contains(framed, 4, 4), contains(framed, 11, 5)]).toEqual([true, false, false]);
    });

    test('a circle is a polygon of n points on it', () => {
        const disc = circle(3, 4, 20);
        const n = vertexCount(disc);
        expect(n % 4).toBe(0);
        expect(area(disc)).toBeCloseTo(0.5 * n * 100 * Math.sin((2 * Math.PI) / n), 9);
        expect(perimeter(disc)).toBeCloseTo(2 * n * 10 * Math.sin(Math.PI / n), 9);
        expect(centroid(disc)!.x).toBeCloseTo(3, 9);
    });

    test('a circle strays from the true one by no more than the tolerance, and hardly less', () => {
        for (const [diameter, tolerance] of [
            [1, 0.005],
            [20, 0.005],
            [300, 0.005],
            [300, 0.1],
        ] as const) {
            const sagitta = (diameter / 2) * (1 - Math.cos(Math.PI / vertexCount(circle(0, 0, diameter, tolerance))));
            expect(sagitta).toBeLessThanOrEqual(tolerance);
            expect(vertexCount(circle(0, 0, diameter, tolerance))).toBeLessThan(
                (2 * Math.PI) / chordAngle(diameter / 2, tolerance) + 4,
            );
        }
    });

    test('a small ring far away keeps its digits', () => {
        const far = translate(rectangle(0, 0, 0.01, 0.01), 90_000, 90_000);
        expect(area(far)).toBeCloseTo(1e-4, 9);
        expect(signedArea(far.rings[0]!)).toBeGreaterThan(0);
    });

    test('nothing', () => {
        expect([area(emptyRegion), perimeter(emptyRegion), vertexCount(emptyRegion)]).toEqual([0, 0, 0]);
        expect([bounds(emptyRegion), centroid(emptyRegion)]).toEqual([undefined, undefined]);
        expect([isEmpty(emptyRegion), contains(emptyRegion, 0, 0)]).toEqual([true, false]);
        for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
            expect(isEmpty(circle(0, 0, bad))).toBe(true);
            expect(isEmpty(rectangle(0, 0, bad, 1))).toBe(true);
        }
        expect(vertexCount(circle(0, 0, 1e308))).toBeLessThan(1e6);
    });

    test('winding', () => {
        const ring = square.rings[0]!;
        expect([windingOf(ring, 5, 5), windingOf(ring.toReversed(), 5, 5), windingOf(ring, 0, 0)]).toEqual([1, 1, 0]);
        expect(windingOf(Float64Array.of(2, 3, 2, 7, 12, 7, 12, 3), 5, 5)).toBe(-1);
        expect(windingOf(Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4, 0, 0, 4, 0, 4, 4, 0, 4), 1, 1)).toBe(2);
    });
});

describe('distances', () => {
    test('to the edge', () => {
        expect(distanceToEdge(square, 7, 5)).toBe(2);
        expect(distanceToEdge(square, 15, 11)).toBe(5);
        expect([depthInside(square, 7, 5), depthInside(square, 15, 11)]).toEqual([2, -5]);
        expect(depthInside(framed, 4, 3)).toBe(-1);
        expect(distanceToEdge(emptyRegion, 0, 0)).toBe(Number.POSITIVE_INFINITY);
    });

    test('of a region inside a blank', () => {
        const blank = rectangle(0, 0, 100, 60);
        expect(margin(rectangle(10, 20, 30, 30), blank)).toBe(10);
        expect(margin(circle(50, 30, 40), blank)).toBeCloseTo(10, 9);
        expect(margin(rectangle(0, 20, 30, 30), blank)).toBe(0);
    });

    test('of a region beyond a blank', () => {
        const blank = rectangle(0, 0, 100, 60);
        expect(margin(rectangle(-7, 20, 30, 30), blank)).toBe(-7);
        expect(margin(rectangle(103, 64, 30, 30), blank)).toBeCloseTo(-Math.hypot(33, 34), 9);
        expect(margin(emptyRegion, blank)).toBe(Number.POSITIVE_INFINITY);
    });

    test('between two regions', () => {
        expect(edgeDistance(rectangle(0, 0, 10, 10), rectangle(13, 14, 5, 5))).toBe(5);
        // The nearest corner belongs now to the one, now to the other.
        const wedge = unite([Float64Array.of(12, 5, 20, 0, 20, 10)]);
        expect(edgeDistance(rectangle(0, 0, 10, 10), wedge)).toBe(2);
        expect(edgeDistance(wedge, rectangle(0, 0, 10, 10))).toBe(2);
        expect(edgeDistance(wedge, emptyRegion)).toBe(Number.POSITIVE_INFINITY);
    });

    test('a point is inside just when its depth is positive', () => {
        fc.assert(
            fc.property(
                regions(),
                fc.double({ min: 0, max: 50, noNaN: true }),
                fc.double({ min: 0, max: 50, noNaN: true }),
                (region, x, y) => {
                    const depth = depthInside(region, x, y);
                    if (Math.abs(depth) > 1e-9 && !isEmpty(region)) expect(contains(region, x, y)).toBe(depth > 0);
                },
            ),
            { numRuns: 200, seed: 51 },
        );
    });
});
