import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract } from '../../shared/geometry/boolean';
import { edgeDistance, margin } from '../../shared/geometry/distance';
import { asymmetryOf, type Point, registrationMarks } from '../../shared/geometry/marks';
import { area } from '../../shared/geometry/measure';
import { emptyRegion } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { symmetryOf } from '../../shared/geometry/symmetry';
import { regions } from './shapes-at-random';

describe('marks around a round inlay', () => {
    test.each([3, 4, 5, 6, 8])('%i of them fit one way only', (count) => {
        const art = circle(82, 82, 100);
        const blank = rectangle(0, 0, 165, 165);
        const marks = registrationMarks(art, blank, count, 3, 2);
        expect(marks.points.length).toBe(count);
        expect(marks.asymmetry).toBeGreaterThan(3);
        const found = symmetryOf(marks.region);
        expect([found.axis.symmetric, found.mirror.symmetric, found.rotation.order]).toEqual([false, false, 1]);
        expect(margin(marks.region, blank)).toBeGreaterThanOrEqual(2 - 1e-6);
        expect(edgeDistance(marks.region, art)).toBeGreaterThanOrEqual(2 - 1e-6);
        expect(area(marks.region) / (count * area(circle(0, 0, 3)))).toBeCloseTo(1, 3);
    });

    test('fewer than three cannot', () => {
        for (const count of [1, 2])
            expect(registrationMarks(circle(82, 82, 100), rectangle(0, 0, 165, 165), count, 3, 2).asymmetry).toBe(0);
    });

    test('no room, no marks', () => {
        expect(registrationMarks(circle(50, 50, 100), circle(50, 50, 104), 3, 3, 2).points).toEqual([]);
        expect(registrationMarks(rectangle(0, 0, 10, 10), emptyRegion, 3, 3, 2).points).toEqual([]);
        for (const bad of [0, -1, Number.NaN])
            expect(registrationMarks(circle(50, 50, 10), circle(50, 50, 104), bad, 3, 2).points).toEqual([]);
        expect(registrationMarks(circle(50, 50, 10), circle(50, 50, 104), 3, Number.POSITIVE_INFINITY, 2).points).toEqual([]);
    });

    test('any art', () => {
        fc.assert(
            fc.property(regions(), (art) => {
                const blank = rectangle(-20, -20, 90, 90);
                const { region, points, asymmetry } = registrationMarks(art, blank, 3, 3, 2);
                expect(points.length).toBe(3);
                expect(asymmetry).toBeGreaterThan(1);
                expect(area(subtract(region, blank))).toBe(0);
                expect(edgeDistance(region, art)).toBeGreaterThanOrEqual(2 - 1e-6);
            }),
            { numRuns: 20, seed: 111 },
        );
    });
});

describe('asymmetry of points', () => {
    const polygon = (n: number): Point[] =>
        Array.from({ length: n }, (_, k) => ({
            x: 10 * Math.cos((2 * Math.PI * k) / n),
            y: 10 * Math.sin((2 * Math.PI * k) / n),
        }));

    test('is zero for what turns or mirrors onto itself', () => {
        for (const n of [3, 4, 5, 8]) expect(asymmetryOf(polygon(n))).toBeLessThan(1e-9);
        // An isosceles triangle, a rectangle, a parallelogram.
        expect(
            asymmetryOf([
                { x: 0, y: 0 },
                { x: 10, y: 0 },
                { x: 5, y: 3 },
            ]),
        ).toBeLessThan(1e-9);
        expect(
            asymmetryOf([
                { x: 0, y: 0 },
                { x: 10, y: 0 },
                { x: 10, y: 4 },
                { x: 0, y: 4 },
            ]),
        ).toBeLessThan(1e-9);
        expect(
            asymmetryOf([
                { x: 0, y: 0 },
                { x: 10, y: 0 },
                { x: 13, y: 4 },
                { x: 3, y: 4 },
            ]),
        ).toBeLessThan(1e-9);
    });

    test('is positive for a scalene triangle', () => {
        expect(
            asymmetryOf([
                { x: 0, y: 0 },
                { x: 10, y: 0 },
                { x: 3, y: 6 },
            ]),
        ).toBeGreaterThan(0.5);
    });
});
