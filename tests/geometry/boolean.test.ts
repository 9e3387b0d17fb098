import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { divide, exclude, intersect, subtract, union, unite } from '../../shared/geometry/boolean';
import { toGrid, unitsPerMillimetre } from '../../shared/geometry/grid';
import { area, perimeter } from '../../shared/geometry/measure';
import { emptyRegion, type Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { rotate } from '../../shared/geometry/transform';
import { latticeRings, regions } from './shapes-at-random';
import { slabArea } from './slab-area';

const ring = (...numbers: number[]) => Float64Array.from(numbers);

describe('filling rings', () => {
    test('a ring that doubles back along a horizontal keeps its sense', () => {
        const region = unite([ring(90, 85, 80, 85, 85, 85, 90, 20)]);
        expect(area(region)).toBeCloseTo((5 * 65) / 2, 9);
    });

    test('a ring inside another is filled or a hole, by rule and sense', () => {
        const outer = ring(0, 0, 10, 0, 10, 10, 0, 10);
        const same = ring(2, 2, 5, 2, 5, 5, 2, 5);
        const against = ring(2, 2, 2, 5, 5, 5, 5, 2);
        expect(area(unite([outer, same], 'nonzero'))).toBe(100);
        expect(area(unite([outer, against], 'nonzero'))).toBe(91);
        expect(area(unite([outer, same], 'evenodd'))).toBe(91);
        expect(area(unite([outer, against], 'evenodd'))).toBe(91);
    });

    test('a ring wound backwards on its own is filled and turned around', () => {
        const region = unite([ring(0, 0, 0, 10, 10, 10, 10, 0)]);
        expect(area(region)).toBe(100);
    });

    test('a bow tie gives two triangles', () => {
        const region = unite([ring(0, 0, 10, 10, 10, 0, 0, 10)]);
        expect(area(region)).toBeCloseTo(50, 9);
        expect(region.rings.length).toBe(2);
    });

    test('a ring twice around is filled once, or not at all', () => {
        const twice = ring(0, 0, 4, 0, 4, 4, 0, 4, 0, 0, 4, 0, 4, 4, 0, 4);
        expect(area(unite([twice], 'nonzero'))).toBe(16);
        expect(area(unite([twice], 'evenodd'))).toBe(0);
    });

    test('fractions of a millimetre survive', () => {
        expect(area(unite([ring(0.1234, 0.1, 10.7654, 0.1, 10.7654, 0.3001, 0.1234, 0.3001)]))).toBeCloseTo(10.642 * 0.2001, 9);
    });

    test('many nested rings at once', () => {
        const rings = Array.from({ length: 300 }, (_, k) => ring(k, k, 1000 - k, k, 1000 - k, 1000 - k, k, 1000 - k));
        let stripes = 0;
        for (let k = 0; k < 300; k++) stripes += (k % 2 === 0 ? 1 : -1) * (1000 - 2 * k) ** 2;
        expect(area(unite(rings, 'evenodd'))).toBeCloseTo(stripes, 3);
        expect(area(unite(rings, 'nonzero'))).toBe(1_000_000);
    });

    test('the area agrees with slabs on rings full of coincidences', () => {
        fc.assert(
            fc.property(latticeRings(), fc.constantFrom('nonzero' as const, 'evenodd' as const), (rings, rule) => {
                const units = rings.flatMap((each) => toGrid(each) ?? []);
                const expected = slabArea('union', rule, units, []) / unitsPerMillimetre ** 2;
                const region = unite(rings, rule);
                expect(Math.abs(area(region) - expected)).toBeLessThan(2e-4 * (1 + perimeter({ rings })));
            }),
            { numRuns: 2000, seed: 11 },
        );
    });

    test('filling what is filled changes nothing', () => {
        fc.assert(
            fc.property(regions(), (region) => {
                expect(area(unite(region.rings))).toBeCloseTo(area(region), 4);
                expect(area(unite(region.rings, 'evenodd'))).toBeCloseTo(area(region), 4);
            }),
            { numRuns: 100, seed: 12 },
        );
    });
});

describe('two regions', () => {
    test('known shapes', () => {
        const square = rectangle(0, 0, 10, 10);
        const other = rectangle(5, 5, 10, 10);
        expect(area(union([square, other]))).toBe(175);
        expect(area(intersect(square, other))).toBe(25);
        expect(area(subtract(square, other))).toBe(75);
        expect(area(exclude(square, other))).toBe(150);
    });

    test('a square turned by an eighth makes the eight-pointed star of known area', () => {
        // The overlap is a regular octagon of inradius 1: area 8·tan(pi/8).
        const square = rectangle(-1, -1, 2, 2);
        const turned = rotate(square, Math.PI / 4);
        expect(area(intersect(square, turned))).toBeCloseTo(8 * Math.tan(Math.PI / 8), 3);
        expect(area(union([square, turned]))).toBeCloseTo(8 - 8 * Math.tan(Math.PI / 8), 3);
    });

    test('nothing stays nothing', () => {
        const square = rectangle(0, 0, 1, 1);
        expect(union([])).toBe(emptyRegion);
        expect(area(union([square, emptyRegion]))).toBe(1);
        expect(area(subtract(square, emptyRegion))).toBe(1);
        expect(area(subtract(emptyRegion, square))).toBe(0);
        expect(area(intersect(square, emptyRegion))).toBe(0);
        expect(area(exclude(emptyRegion, square))).toBe(1);
        expect(area(subtract(square, square))).toBe(0);
    });

    test('divided at once they are what they are one after the other', () => {
        fc.assert(
            fc.property(regions(), regions(), (a, b) => {
                expect(divide(a, b)).toEqual({ inside: intersect(a, b), outside: subtract(a, b) });
            }),
            { numRuns: 200, seed: 29 },
        );
    });

    test('a lens of two circles', () => {
        // Two circles of radius r, their middles d apart: 2r²·acos(d/2r) − (d/2)·√(4r² − d²).
        const expected = 2 * 25 * Math.acos(0.6) - 3 * Math.sqrt(100 - 36);
        const lens = intersect(circle(0, 0, 10, 1e-4), circle(6, 0, 10, 1e-4));
        expect(area(lens)).toBeCloseTo(expected, 2);
    });

    test('areas add up', () => {
        const sum = (...parts: Region[]) => parts.reduce((total, part) => total + area(part), 0);
        fc.assert(
            fc.property(regions(), regions(), (a, b) => {
                const slack = 2e-4 * (1 + perimeter(a) + perimeter(b));
                expect(Math.abs(sum(union([a, b])) - (sum(a, b) - sum(intersect(a, b))))).toBeLessThan(slack);
                expect(Math.abs(sum(subtract(a, b), intersect(a, b)) - sum(a))).toBeLessThan(slack);
                expect(Math.abs(sum(exclude(a, b)) - sum(subtract(a, b), subtract(b, a)))).toBeLessThan(slack);
            }),
            { numRuns: 300, seed: 13 },
        );
    });
});
