import { describe, expect, test } from 'vitest';
import { dash } from '../../shared/geometry/dash';
import { area } from '../../shared/geometry/measure';
import { type Path, widen } from '../../shared/geometry/widen';

const open = (...points: number[]): Path => ({ points: Float64Array.from(points), closed: false });
const square: Path = { points: Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10), closed: true };
const plain = (paths: readonly Path[]) => paths.map((path) => Array.from(path.points, (value) => Math.round(value * 1e9) / 1e9));

describe('an open path', () => {
    test('is cut by the pattern', () => {
        expect(plain(dash([open(0, 0, 10, 0)], [3, 2], 0))).toEqual([
            [0, 0, 3, 0],
            [5, 0, 8, 0],
        ]);
    });

    test('starts within the pattern by the offset, forwards or backwards', () => {
        expect(plain(dash([open(0, 0, 10, 0)], [3, 2], 1))).toEqual([
            [0, 0, 2, 0],
            [4, 0, 7, 0],
            [9, 0, 10, 0],
        ]);
        expect(plain(dash([open(0, 0, 10, 0)], [3, 2], -1))).toEqual([
            [1, 0, 4, 0],
            [6, 0, 9, 0],
        ]);
        expect(dash([open(0, 0, 10, 0)], [3, 2], 501)).toEqual(dash([open(0, 0, 10, 0)], [3, 2], 1));
        expect(plain(dash([open(0, 0, 10, 0)], [3, 2], 3))).toEqual([
            [2, 0, 5, 0],
            [7, 0, 10, 0],
        ]);
    });

    test('keeps its corners', () => {
        expect(plain(dash([open(0, 0, 2, 0, 2, 5)], [4, 1], 0))).toEqual([
            [0, 0, 2, 0, 2, 2],
            [2, 3, 2, 5],
        ]);
    });

    test('has the same pattern for each path anew', () => {
        expect(plain(dash([open(0, 0, 4, 0), open(0, 1, 4, 1)], [3, 2], 0))).toEqual([
            [0, 0, 3, 0],
            [0, 1, 3, 1],
        ]);
    });
});

describe('a closed path', () => {
    test('is cut around its last edge too', () => {
        const dashes = dash([square], [1, 1], 0.5);
        expect(dashes.length).toBe(20);
        expect(plain(dashes)[0]).toEqual([0, 0.5, 0, 0, 0.5, 0]);
    });

    test('stays closed where the pattern has no gap', () => {
        expect(dash([square], [100, 1], 0)).toEqual([square]);
        expect(dash([square], [100, 1], 5)).toEqual([square]);
    });

    test('covers its part of the length', () => {
        for (const offset of [0, 0.3, 1.7, 2.2, 3.1]) {
            const lengths = dash([square], [1.25, 0.75], offset).map(({ points }) => {
                let sum = 0;
                for (let i = 2; i < points.length; i += 2)
                    sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
                return sum;
            });
            expect(lengths.reduce((sum, each) => sum + each, 0)).toBeCloseTo(25, 9);
        }
    });
});

test('dashes of no length become dots', () => {
    const dots = dash([open(0, 0, 10, 0)], [0, 2.5], 0);
    const region = widen(dots, { width: 1, cap: 'round', join: 'miter', miterLimit: 4 }, 1e-5);
    expect(area(region)).toBeCloseTo((Math.PI / 4) * dots.length, 3);
    expect(dots.length).toBeGreaterThanOrEqual(4);
});

test('a pattern that makes no sense leaves the path solid', () => {
    const line = [open(0, 0, 10, 0)];
    for (const array of [[], [0, 0], [-1, 2], [Number.NaN, 1], [Number.POSITIVE_INFINITY, 1], [1e-12, 1e-12], [1e308, 1e308]]) {
        expect(dash(line, array, 0)).toBe(line);
    }
    expect(dash(line, [3, 2], Number.NaN)).toEqual(dash(line, [3, 2], 0));
    expect(dash([open(), open(1, 1)], [3, 2], 0)).toEqual([]);
});
