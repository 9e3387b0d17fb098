import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract } from '../../shared/geometry/boolean';
import { edgeDistance, margin } from '../../shared/geometry/distance';
import { apartWhenTurned, asymmetryOf, type Point, registrationMarks } from '../../shared/geometry/marks';
import { area } from '../../shared/geometry/measure';
import { emptyRegion } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { roundOrder, symmetryOf } from '../../shared/geometry/symmetry';
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

describe('marks that tell the turns of the art apart', () => {
    const middle = { x: 0, y: 0 };
    const opposite = [
        { x: 10, y: 0 },
        { x: -10, y: 0 },
    ];

    test('two opposite each other do not, two in a corner do', () => {
        expect(apartWhenTurned(opposite, { middle, turns: roundOrder })).toBeLessThan(1e-9);
        expect(apartWhenTurned(opposite, { middle, turns: 2 })).toBeLessThan(1e-9);
        expect(apartWhenTurned(opposite, { middle, turns: 3 })).toBeGreaterThan(5);
        const corner = [opposite[0]!, { x: 0, y: 10 }];
        expect(apartWhenTurned(corner, { middle, turns: 4 })).toBeGreaterThan(9);
        expect(apartWhenTurned(corner, { middle: { x: 5, y: 5 }, turns: 2 })).toBeLessThan(1e-9);
    });
    test('one is enough, and art that has one turn only needs none', () => {
        expect(apartWhenTurned([{ x: 10, y: 0 }], { middle, turns: 4 })).toBeCloseTo(10 * Math.SQRT2, 9);
        expect(apartWhenTurned([{ x: 10, y: 0 }], { middle, turns: roundOrder })).toBe(Number.POSITIVE_INFINITY);
        expect(apartWhenTurned(opposite, { middle, turns: 1 })).toBe(Number.POSITIVE_INFINITY);
        expect(apartWhenTurned(opposite, undefined)).toBe(Number.POSITIVE_INFINITY);
        expect(apartWhenTurned([], { middle, turns: 4 })).toBe(Number.POSITIVE_INFINITY);
    });
    test('are found wherever there is room, outside of the art and on the blank', () => {
        const square = (half: number) => rectangle(-half, -half, 2 * half, 2 * half);
        const arts = [
            { art: circle(0, 0, 40), turns: roundOrder },
            { art: square(18), turns: 4 },
            { art: rectangle(-20, -9, 40, 18), turns: 2 },
        ];
        const sizes = fc.record({
            left: fc.integer({ min: 28, max: 70 }),
            right: fc.integer({ min: 28, max: 70 }),
            above: fc.integer({ min: 28, max: 70 }),
            below: fc.integer({ min: 28, max: 70 }),
            count: fc.integer({ min: 1, max: 6 }),
            which: fc.integer({ min: 0, max: 2 }),
        });
        fc.assert(
            fc.property(sizes, ({ left, right, above, below, count, which }) => {
                const { art, turns } = arts[which]!;
                const blank = rectangle(-left, -above, left + right, above + below);
                const { region, points } = registrationMarks(art, blank, count, 1, 2, { middle, turns });
                expect(points.length).toBe(count);
                expect(apartWhenTurned(points, { middle, turns })).toBeGreaterThan(1);
                expect(area(subtract(region, blank))).toBe(0);
                expect(edgeDistance(region, art)).toBeGreaterThanOrEqual(2 - 1e-6);
            }),
            { numRuns: 60, seed: 2112 },
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
