import { describe, expect, test } from 'vitest';
import { unite } from '../../shared/geometry/boolean';
import { distanceToEdge } from '../../shared/geometry/distance';
import { area, bounds, contains } from '../../shared/geometry/measure';
import { circle } from '../../shared/geometry/shapes';
import { type Cap, type Path, type Stroke, widen } from '../../shared/geometry/widen';
import { island, seeded } from './shapes-at-random';

const open = (...points: number[]): Path => ({ points: Float64Array.from(points), closed: false });
const closed = (...points: number[]): Path => ({ points: Float64Array.from(points), closed: true });
const plain: Stroke = { width: 2, cap: 'butt', join: 'miter', miterLimit: 4 };

describe('areas of known strokes', () => {
    test.each<[string, Path, Partial<Stroke>, number]>([
        ['a line with butt caps', open(0, 0, 10, 0), {}, 20],
        ['with square caps', open(0, 0, 10, 0), { cap: 'square' }, 24],
        ['with round caps', open(0, 0, 10, 0), { cap: 'round' }, 20 + Math.PI],
        ['a slanted line', open(1, 1, 7, 9), {}, 20],
        ['a right angle, mitred', open(0, 0, 10, 0, 10, 10), {}, 40],
        ['bevelled', open(0, 0, 10, 0, 10, 10), { join: 'bevel' }, 39.5],
        ['rounded', open(0, 0, 10, 0, 10, 10), { join: 'round' }, 39 + Math.PI / 4],
        ['a closed square', closed(0, 0, 10, 0, 10, 10, 0, 10), {}, 80],
        ['wound the other way', closed(0, 0, 0, 10, 10, 10, 10, 0), {}, 80],
        ['rounded', closed(0, 0, 10, 0, 10, 10, 0, 10), { join: 'round' }, 76 + Math.PI],
        ['there and back', open(0, 0, 10, 0, 0, 0), { join: 'bevel' }, 20],
        ['there and back, rounded', open(0, 0, 10, 0, 0, 0), { join: 'round' }, 20 + Math.PI / 2],
        ['there and back, closed, has no caps', closed(0, 0, 10, 0), { cap: 'square' }, 20],
        ['a line with points in between', open(0, 0, 1, 0, 1, 0, 5, 0, 10, 0), {}, 20],
        ['a stroke wider than what it surrounds', closed(0, 0, 1, 0, 1, 1, 0, 1), { width: 4 }, 25],
    ])('%s', (_, path, change, expected) => {
        expect(area(widen([path], { ...plain, ...change }, 1e-4))).toBeCloseTo(expected, 2);
    });

    test('a path that crosses itself is covered once', () => {
        expect(area(widen([open(-5, 0, 5, 0, 5, 8, 0, 8, 0, -5)], plain))).toBeCloseTo(
            10 * 2 + 1 + 8 * 2 + 5 * 2 + 1 + 13 * 2 - 4 - 1 - 1 - 1 + 1,
            6,
        );
    });
});

describe('strokes without length', () => {
    test.each<[Cap, number]>([
        ['butt', 0],
        ['square', 4],
        ['round', Math.PI],
    ])('draw a dot with %s caps', (cap, expected) => {
        for (const path of [open(3, 3), open(3, 3, 3, 3), closed(3, 3, 3, 3, 3, 3)]) {
            expect(area(widen([path], { ...plain, cap }, 1e-5))).toBeCloseTo(expected, 3);
        }
    });
});

test('a round stroke holds exactly the points nearer than half its width', () => {
    const random = seeded(41);
    for (let run = 0; run < 80; run++) {
        const points = run % 2 === 0 ? Float64Array.from({ length: 12 }, () => random() * 40) : island(20, 20, 18, 60, random);
        const path = { points, closed: run % 3 === 0 };
        const width = [0.1, 1, 6][run % 3]!;
        const stroke = widen([path], { width, cap: 'round', join: 'round', miterLimit: 4 });
        const there = Array.from(points);
        for (let i = points.length - 4; i > 0 && !path.closed; i -= 2) there.push(points[i]!, points[i + 1]!);
        const line = { rings: [Float64Array.from(there)] };
        for (let k = 0; k < 100; k++) {
            const x = random() * 50 - 5;
            const y = random() * 50 - 5;
            const distance = distanceToEdge(line, x, y);
            if (Math.abs(distance - width / 2) > 0.006) expect(contains(stroke, x, y)).toBe(distance < width / 2);
        }
    }
});

describe('with a matrix', () => {
    test('an uneven scale stretches the stroke', () => {
        const region = widen([open(0, 0, 10, 0)], { ...plain, matrix: { a: 1, b: 0, c: 0, d: 3, e: 5, f: 5 } });
        expect(bounds(region)).toEqual({ minX: 5, minY: 2, maxX: 15, maxY: 8 });
    });

    test('units far from millimetres keep their fineness', () => {
        const small = widen([open(0, 0, 1e-4, 0)], {
            ...plain,
            width: 2e-5,
            cap: 'round',
            matrix: { a: 1e5, b: 0, c: 0, d: 1e5, e: 0, f: 0 },
        });
        expect(area(small)).toBeCloseTo(20 + Math.PI, 1);
    });

    test('mirroring changes no area', () => {
        const path = open(0, 0, 10, 0, 3, 7, 12, 9);
        const mirrored = widen([path], { ...plain, matrix: { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 } });
        expect(area(mirrored)).toBeCloseTo(area(widen([path], plain)), 4);
    });
});

test('a dotted circle is no more than its dots', () => {
    const dots = Array.from({ length: 100 }, (_, k) =>
        open(50 * Math.cos(k * 0.02 * Math.PI), 50 * Math.sin(k * 0.02 * Math.PI)),
    );
    const region = widen(dots, { ...plain, width: 1, cap: 'round' });
    expect(region.rings.length).toBe(100);
    expect(area(region) / (100 * area(circle(0, 0, 1)))).toBeCloseTo(1, 2);
});

test('numbers that make no sense cover nothing, or less, and never throw', () => {
    const line = open(0, 0, 10, 0);
    for (const width of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
        expect(widen([line], { ...plain, width }).rings).toEqual([]);
    expect(area(widen([open(0, 0, Number.NaN, 5, 10, 0)], plain))).toBe(20);
    expect(area(widen([open(0, 0, 1e308, 1e308, -1e308, 5)], plain))).toBeGreaterThanOrEqual(0);
    expect(widen([line], { ...plain, width: 1e308 }).rings.length).toBe(1);
    expect(widen([line], { ...plain, matrix: { a: Number.NaN, b: 0, c: 0, d: 1, e: 0, f: 0 } }).rings).toEqual([]);
    expect(widen([line], { ...plain, matrix: { a: 0, b: 0, c: 0, d: 0, e: 0, f: 0 } }).rings).toEqual([]);
    expect(area(widen([open(0, 0, 10, 0, 10, 10)], { ...plain, miterLimit: Number.NaN }))).toBeCloseTo(39.5, 6);
    expect(widen([open()], plain).rings).toEqual([]);
    expect(area(unite(widen([line], plain).rings))).toBe(20);
});
