import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract, union, unite } from '../../shared/geometry/boolean';
import { area, isEmpty } from '../../shared/geometry/measure';
import { narrow, narrowGaps, vanishing } from '../../shared/geometry/narrow';
import type { NarrowPlace } from '../../shared/geometry/narrow-place';
import { grow } from '../../shared/geometry/offset';
import { emptyRegion, type Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { rotate } from '../../shared/geometry/transform';
import { widen } from '../../shared/geometry/widen';
import { archipelago, island, regions, seeded } from './shapes-at-random';

const kinds = (places: readonly NarrowPlace[]) => places.map((place) => place.kind).sort();
const dumbbell = union([rectangle(0, 0, 10, 10), rectangle(9, 4.9, 12, 0.2), rectangle(20, 0, 10, 10)]);

describe('parts', () => {
    test('a bridge between two squares', () => {
        for (const angle of [0, 0.7, 2]) {
            const [place, ...others] = narrow(rotate(dumbbell, angle), 0.5);
            expect(others).toEqual([]);
            expect(place!.kind).toBe('neck');
            expect(place!.width).toBeCloseTo(0.2, 3);
            expect(place!.area).toBeCloseTo(2, 1);
        }
        expect(narrow(dumbbell, 0.19)).toEqual([]);
    });

    test('the waist of an hourglass, at its narrowest', () => {
        const [place, ...others] = narrow(unite([Float64Array.of(0, 0, 10, 0, 5.1, 5, 10, 10, 0, 10, 4.9, 5)]), 0.5);
        expect(others).toEqual([]);
        expect([place!.kind, place!.x, place!.y]).toEqual(['neck', expect.closeTo(5, 3), expect.closeTo(5, 3)]);
        expect(place!.width).toBeCloseTo(0.2, 3);
    });

    test('a hair that ends in nothing', () => {
        const [place, ...others] = narrow(union([circle(0, 0, 3), rectangle(0, 0, 10, 0.1)]), 0.5);
        expect(others).toEqual([]);
        expect(place!.kind).toBe('tip');
        expect(place!.width).toBeCloseTo(0.1, 3);
        expect(place!.area).toBeGreaterThan(0.8);
    });

    test('a sharp corner counts, a blunt one does not', () => {
        const wedge = (degrees: number) => {
            const half = 10 * Math.tan((degrees * Math.PI) / 360);
            return unite([Float64Array.of(0, 0, 10, -half, 10, half)]);
        };
        expect(kinds(narrow(wedge(20), 0.5))).toEqual(['tip']);
        expect(narrow(wedge(40), 0.5)).toEqual([]);
        expect(narrow(rectangle(0, 0, 10, 10), 2)).toEqual([]);
    });

    test('loose dots and strips, with their own width', () => {
        const dots = union([circle(0, 0, 0.3), circle(10, 0, 3), rectangle(20, 0, 8, 0.2)]);
        const places = narrow(dots, 0.5);
        expect(kinds(places)).toEqual(['whole', 'whole']);
        expect(places.map((place) => place.width)).toEqual([expect.closeTo(0.2, 2), expect.closeTo(0.3, 1)]);
        expect(places[0]!.area).toBeCloseTo(1.6, 2);
    });

    test('a thin ring is one whole piece', () => {
        const [place, ...others] = narrow(subtract(circle(0, 0, 20), circle(0, 0, 19.8)), 0.5);
        expect(others).toEqual([]);
        expect(place).toMatchObject({ kind: 'whole', width: expect.closeTo(0.1, 2) });
        expect(place!.area / (Math.PI * (100 - 9.9 ** 2))).toBeCloseTo(1, 1);
    });

    test('many bridges are counted one by one', () => {
        const posts = Array.from({ length: 40 }, (_, k) => rectangle(5 * k, 0, 3, 3));
        const bridges = Array.from({ length: 39 }, (_, k) => rectangle(5 * k + 2, 1, 4, 0.1 + 0.01 * k));
        const places = narrow(union([...posts, ...bridges]), 1);
        expect(places.length).toBe(39);
        for (let k = 0; k < 39; k++) expect(places[k]!.width).toBeCloseTo(0.1 + 0.01 * k, 3);
    });

    test('a stroke is narrow just below its width', () => {
        const path = { points: island(50, 50, 40, 60, seeded(4)), closed: true };
        const stroke = widen([path], { width: 0.3, cap: 'round', join: 'round', miterLimit: 4 });
        expect(narrow(stroke, 0.32).some((place) => place.kind !== 'tip')).toBe(true);
        expect(narrow(stroke, 0.28).filter((place) => place.kind !== 'tip')).toEqual([]);
    });
});

describe('gaps', () => {
    test('between two parts', () => {
        const [place, ...others] = narrowGaps(union([rectangle(0, 0, 10, 10), rectangle(10.3, 0, 10, 10)]), 0.5);
        expect(others).toEqual([]);
        expect(place).toMatchObject({ kind: 'neck', width: expect.closeTo(0.3, 3), x: expect.closeTo(10.15, 3) });
    });

    test('a slot and a pinhole', () => {
        const plate = subtract(rectangle(0, 0, 20, 20), union([rectangle(5, -1, 0.2, 10), circle(15, 15, 0.4)]));
        expect(kinds(narrowGaps(plate, 0.5))).toEqual(['tip', 'whole']);
        expect(narrow(plate, 0.5)).toEqual([]);
    });
});

describe('vanishing', () => {
    test('the pieces that a clearance eats', () => {
        const region = union([
            circle(0, 0, 0.3),
            circle(10, 0, 3),
            rectangle(20, 0, 8, 0.2),
            subtract(circle(50, 0, 10), circle(50, 0, 9.7)),
        ]);
        expect(area(vanishing(region, 0.1))).toBe(0);
        expect(vanishing(region, 0.25).rings.length).toBe(3);
        expect(vanishing(region, 0.35).rings.length).toBe(4);
        expect(area(vanishing(region, 4))).toBeCloseTo(area(region), 9);
    });

    test('is told of a piece just when shrinking leaves nothing of it', () => {
        fc.assert(
            fc.property(regions(), fc.double({ min: 0.1, max: 10, noNaN: true }), (region: Region, clearance) => {
                const gone = vanishing(region, clearance);
                expect(isEmpty(grow(gone, -clearance / 2))).toBe(true);
                const kept = area(region) - area(gone);
                expect(kept > 1e-9).toBe(!isEmpty(grow(region, -clearance / 2)));
            }),
            { numRuns: 100, seed: 101 },
        );
    });
});

test('heavy art is looked through', () => {
    const coast = unite(archipelago(50_000));
    const bridged = union([coast, rectangle(0, 149.95, 300, 0.1)]);
    expect(narrow(bridged, 0.3).some((place) => place.kind !== 'tip' && Math.abs(place.width - 0.1) < 0.01)).toBe(true);
});

test('numbers that make no sense find nothing', () => {
    for (const limit of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
        expect(narrow(dumbbell, limit)).toEqual([]);
        expect(narrowGaps(dumbbell, limit)).toEqual([]);
        expect(vanishing(dumbbell, limit).rings).toEqual([]);
    }
    expect(narrow(emptyRegion, 1)).toEqual([]);
    expect(narrow(dumbbell, 1e-9)).toEqual([]);
    expect(narrow(dumbbell, 1e9).length).toBe(1);
});
