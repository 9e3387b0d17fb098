import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exclude, subtract, union, unite } from '../../shared/geometry/boolean';
import { areaBeyond, grownBoundary, inverse, withoutHoles } from '../../shared/geometry/inverse';
import { holes, islands, loosePieces } from '../../shared/geometry/islands';
import { area, bounds, perimeter } from '../../shared/geometry/measure';
import { emptyRegion } from '../../shared/geometry/region';
import { repeat } from '../../shared/geometry/repeat';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { mostCopies } from '../../shared/recipe/most-copies';
import { regions } from './shapes-at-random';

/** A target: rings about a middle, by their radii from outside in, full and empty in turn. */
function target(...radii: number[]) {
    return radii.map((radius) => circle(50, 50, 2 * radius)).reduce(exclude);
}

describe('inverse', () => {
    test('with the art it makes up the boundary', () => {
        fc.assert(
            fc.property(regions(), (art) => {
                const boundary = circle(25, 25, 80);
                const turned = inverse(art, boundary);
                const slack = 2e-4 * (1 + perimeter(art));
                expect(Math.abs(area(turned) + area(art) - area(boundary))).toBeLessThan(slack);
                expect(area(exclude(union([turned, art]), boundary))).toBeLessThan(slack);
            }),
            { numRuns: 100, seed: 61 },
        );
    });

    test('twice is the art again', () => {
        const art = target(30, 20, 10);
        expect(area(exclude(inverse(inverse(art, circle(50, 50, 90)), circle(50, 50, 90)), art))).toBeLessThan(1e-6);
    });

    test('art beyond the boundary is told of', () => {
        expect(areaBeyond(rectangle(0, 0, 10, 10), rectangle(0, 0, 6, 20))).toBe(40);
        expect(areaBeyond(rectangle(1, 1, 3, 3), rectangle(0, 0, 6, 20))).toBe(0);
    });

    test('a boundary grown from the art follows it, without holes', () => {
        const art = union([target(30, 20), rectangle(200, 0, 10, 10)]);
        const boundary = grownBoundary(art, 2);
        expect(boundary.rings.length).toBe(2);
        expect(area(boundary) / (Math.PI * 32 ** 2 + 100 + 80 + Math.PI * 4)).toBeCloseTo(1, 3);
        expect(grownBoundary(art, -1).rings).toEqual([]);
        expect(grownBoundary(art, Number.NaN).rings).toEqual([]);
        expect(area(grownBoundary(art, 0))).toBeCloseTo(area(withoutHoles(art)), 6);
    });
});

describe('pieces', () => {
    test('are outer rings with their own holes', () => {
        const pieces = islands(union([target(40, 35, 30, 20, 10), rectangle(200, 0, 5, 5)]));
        expect(pieces.map((piece) => piece.rings.length).sort()).toEqual([1, 1, 2, 2]);
        expect(pieces.reduce((sum, piece) => sum + area(piece), 0)).toBeCloseTo(area(target(40, 35, 30, 20, 10)) + 25, 9);
        expect(islands(emptyRegion)).toEqual([]);
    });

    test('make up the region, and each is one', () => {
        fc.assert(
            fc.property(regions(), (region) => {
                const pieces = islands(region);
                expect(pieces.reduce((sum, piece) => sum + piece.rings.length, 0)).toBe(region.rings.length);
                for (const piece of pieces) {
                    expect(area(piece)).toBeGreaterThan(0);
                    expect(islands(piece).length).toBe(1);
                }
            }),
            { numRuns: 100, seed: 62 },
        );
    });

    test('thousands with holes are sorted', () => {
        const one = subtract(circle(0, 0, 0.8), circle(0, 0, 0.4));
        const pieces = islands(repeat(one, { columns: 60, rows: 60, stepX: 1, stepY: 1 }));
        expect(pieces.length).toBe(3600);
        for (const piece of pieces) expect(area(piece)).toBeCloseTo(area(one), 6);
    });

    test('holes are filled to their edges', () => {
        const found = holes(target(40, 35, 30, 20));
        expect(found.map((hole) => Math.round(area(hole)))).toEqual(
            [35, 20].map((radius) => Math.round(area(circle(0, 0, 2 * radius)))),
        );
    });
});

describe('burnt through', () => {
    const sheet = rectangle(0, 0, 100, 100);

    test('the middle of a ring falls out, and what is in it', () => {
        const loose = loosePieces(sheet, target(40, 35, 30, 20));
        expect(loose.map((piece) => Math.round(area(piece))).sort((a, b) => a - b)).toEqual(
            [area(target(20)), area(target(35, 30))].map(Math.round).sort((a, b) => a - b),
        );
    });

    test('nothing falls out of a bay', () => {
        expect(loosePieces(sheet, rectangle(40, -5, 5, 60))).toEqual([]);
        expect(loosePieces(sheet, emptyRegion)).toEqual([]);
    });

    test('art in its inverse is loose', () => {
        const art = union([circle(30, 50, 10), circle(70, 50, 10)]);
        expect(loosePieces(sheet, inverse(art, circle(50, 50, 80))).length).toBe(2);
        expect(loosePieces(sheet, inverse(union([art, rectangle(70, 48, 40, 4)]), circle(50, 50, 80))).length).toBe(1);
    });
});

describe('copies on a grid', () => {
    test('apart, and on each other', () => {
        const square = rectangle(1, 2, 4, 4);
        expect(area(repeat(square, { columns: 3, rows: 2, stepX: 5, stepY: 6 }))).toBe(96);
        expect(bounds(repeat(square, { columns: 3, rows: 2, stepX: 5, stepY: 6 }))).toEqual({
            minX: 1,
            minY: 2,
            maxX: 15,
            maxY: 12,
        });
        expect(area(repeat(square, { columns: 2, rows: 1, stepX: 3, stepY: 0 }))).toBe(28);
        expect(repeat(square, { columns: 2, rows: 1, stepX: 4, stepY: 0 }).rings.length).toBe(1);
        expect(area(repeat(square, { columns: 3, rows: 1, stepX: -5, stepY: 0 }))).toBe(48);
    });

    test('numbers that make no sense give none', () => {
        const square = rectangle(0, 0, 1, 1);
        for (const columns of [0, -1, Number.NaN, 1e308, mostCopies + 1]) {
            expect(repeat(square, { columns, rows: 1, stepX: 2, stepY: 2 }).rings).toEqual([]);
        }
        expect(repeat(square, { columns: 2, rows: 2, stepX: Number.NaN, stepY: 2 }).rings).toEqual([]);
        expect(repeat(unite([]), { columns: 2, rows: 2, stepX: 1, stepY: 2 }).rings).toEqual([]);
    });
});
