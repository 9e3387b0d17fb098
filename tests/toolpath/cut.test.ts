import { describe, expect, it } from 'vitest';
import { contains, perimeter } from '../../shared/geometry/measure';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { cutPaths } from '../../shared/toolpath/cut';
import { pathLength } from '../../shared/toolpath/path';
import { dish, reversed } from './shapes';

describe('tabs', () => {
    it('leave as many dark stretches of their width in each ring, and cut the rest', () => {
        const region = dish(30, 30, 60);
        for (const path of cutPaths(region, { tabs: 4, tabWidth: 0.8 })) {
            const starts = [...path.lit!].filter((lit, i) => lit === 0 && path.lit![i - 1] !== 0);
            expect(starts).toHaveLength(4);
            expect(pathLength(path).dark).toBeCloseTo(3.2, 9);
            expect(path.lit!).toHaveLength(path.points.length / 2 - 1);
        }
        const total = cutPaths(region, { tabs: 4, tabWidth: 0.8 }).map(pathLength);
        expect(total.reduce((sum, { lit, dark }) => sum + lit + dark, 0)).toBeCloseTo(perimeter(region), 9);
    });

    it('run round corners and over short edges', () => {
        const [path] = cutPaths(rectangle(0, 0, 4, 4), { tabs: 2, tabWidth: 1.9 });
        expect(pathLength(path!)).toEqual({ lit: expect.closeTo(12.2, 9), dark: expect.closeTo(3.8, 9) });
    });

    it('are fewer in a ring that is too short, and none without being asked for', () => {
        expect(pathLength(cutPaths(circle(0, 0, 2), { tabs: 4, tabWidth: 1 })[0]!).dark).toBeCloseTo(1, 9);
        expect(cutPaths(circle(0, 0, 0.3), { tabs: 4 })[0]!.lit).toBeUndefined();
        expect(cutPaths(circle(0, 0, 20))[0]!.lit).toBeUndefined();
        expect(cutPaths(circle(0, 0, 20), { tabs: Number.NaN, tabWidth: 1e308, leadIn: Number.NaN })[0]!.lit).toBeUndefined();
    });
});

describe('a lead-in', () => {
    it.each([
        ['outside of a piece', rectangle(0, 0, 20, 10)],
        ['inside of a hole', { rings: [...rectangle(0, 0, 40, 40).rings, reversed(rectangle(10, 10, 15, 15).rings[0]!)] }],
        ['round', dish(30, 30, 60)],
    ])('comes from the waste: %s', (_, region) => {
        for (const { points } of cutPaths(region, { leadIn: 2 })) {
            expect(Math.hypot(points[2]! - points[0]!, points[3]! - points[1]!)).toBeCloseTo(2, 9);
            for (const part of [0, 0.5, 0.99]) {
                const [x, y] = [points[0]! + part * (points[2]! - points[0]!), points[1]! + part * (points[3]! - points[1]!)];
                expect(contains(region, x, y)).toBe(false);
            }
            expect([points.at(-2), points.at(-1)]).toEqual([points[2], points[3]]);
        }
    });

    it('is shortened where it would run into the neighbour, and left out where there is no room', () => {
        const apart = (gap: number) => ({
            rings: [
                ...rectangle(0, 0, 10, 10).rings,
                ...rectangle(10 + gap, 0, 10, 10).rings,
                ...rectangle(0, -10 - gap, 20 + gap, 10).rings,
            ],
        });
        const leads = (gap: number): number[] =>
            cutPaths(apart(gap), { leadIn: 4 }, { x: 10, y: 0 }).map(({ points }) => {
                const closed = points[0] === points.at(-2) && points[1] === points.at(-1);
                return closed ? 0 : Math.hypot(points[2]! - points[0]!, points[3]! - points[1]!);
            });
        expect(Math.max(...leads(40))).toBeCloseTo(4, 9);
        expect(Math.min(...leads(1))).toBeLessThan(4);
        for (const gap of [1, 0.2]) {
            for (const { points } of cutPaths(apart(gap), { leadIn: 4 }, { x: 10, y: 0 })) {
                expect(
                    contains(apart(gap), (points[0]! + points[2]!) / 2, (points[1]! + points[3]!) / 2) &&
                        points[0] !== points.at(-2),
                ).toBe(false);
            }
        }
    });
});

describe('rings that are none', () => {
    it('are left out', () => {
        const odd = [
            Float64Array.of(0, 0),
            Float64Array.of(0, 0, Number.NaN, 1, 2, 2),
            Float64Array.of(0, 0, 1e308, 1, 2, 2),
            new Float64Array(),
        ];
        expect(cutPaths({ rings: [...odd, ...rectangle(0, 0, 5, 5).rings] }, { leadIn: 1, tabs: 1 })).toHaveLength(1);
    });
});
