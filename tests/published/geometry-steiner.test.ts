/**
 * Minkowski–Steiner formula: the points within r of a convex shape of area A and perimeter P fill
 * A + P·r + π·r² (Federer, Geometric Measure Theory, 1969; the planar case in Steiner, 1840).
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { unite } from '../../shared/geometry/boolean';
import { area, perimeter } from '../../shared/geometry/measure';
import { grow } from '../../shared/geometry/offset';
import type { Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';

/** A convex polygon with its corners at the given angles on an ellipse. */
function convex(angles: readonly number[], width: number, height: number): Region {
    const sorted = [...new Set(angles)].sort((a, b) => a - b);
    return unite([Float64Array.from(sorted.flatMap((angle) => [width * Math.cos(angle), height * Math.sin(angle)]))]);
}

/** `stray` is how far, in mm, edges may lie from where they should. */
function expectSteiner(region: Region, r: number, stray: number): void {
    const grown = grow(region, r, 'round', stray);
    const expected = area(region) + perimeter(region) * r + Math.PI * r * r;
    expect(Math.abs(area(grown) - expected)).toBeLessThan(stray * perimeter(grown));
}

test('simple shapes', () => {
    for (const region of [rectangle(0, 0, 30, 20), circle(0, 0, 40), convex([0, 2, 4], 10, 10)]) {
        for (const r of [0.025, 0.5, 10, 100]) expectSteiner(region, r, 0.001);
    }
});

test('any convex polygon', () => {
    fc.assert(
        fc.property(
            fc.uniqueArray(fc.integer({ min: 0, max: 627 }), { minLength: 3, maxLength: 60 }),
            fc.integer({ min: 1, max: 100 }),
            fc.integer({ min: 1, max: 100 }),
            fc.integer({ min: 1, max: 5000 }),
            (angles, width, height, r) => {
                const corners = angles.map((angle) => angle / 100);
                expectSteiner(convex(corners, width, height), r / 100, 0.005);
            },
        ),
        { numRuns: 200, seed: 121 },
    );
});

test('and inwards, as long as no edge is eaten up: A − P·r + r²·Σcot(angle/2)', () => {
    for (const n of [3, 4, 6, 12]) {
        const region = convex(
            Array.from({ length: n }, (_, k) => (2 * Math.PI * k) / n),
            20,
            20,
        );
        const corner = (Math.PI * (n - 2)) / n;
        const r = 2;
        const expected = area(region) - perimeter(region) * r + (r * r * n) / Math.tan(corner / 2);
        expect(area(grow(region, -r))).toBeCloseTo(expected, 1);
    }
});
