import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Region, Ring } from '../../shared/geometry/region';
import { circle } from '../../shared/geometry/shapes';
import { depths, parents } from '../../shared/toolpath/nesting';
import { orderRings, travelLength } from '../../shared/toolpath/order';
import { outlinePaths } from '../../shared/toolpath/outline';
import { pathOfRing } from '../../shared/toolpath/path';
import { tour, tourLength } from '../../shared/toolpath/tour';
import { dish, reversed } from './shapes';

/** Even numbers from 0 to 1, the same every time. */
function even(seed: number): () => number {
    let state = seed;
    return () => {
        state = (state * 48271) % 2147483647;
        return state / 2147483647;
    };
}

describe('nesting', () => {
    it('finds the ring next around each', () => {
        const rings = dish(30, 30, 40).rings;
        const other = circle(80, 30, 10).rings;
        expect([...parents([...rings, ...other])]).toEqual([-1, 0, 1, -1]);
        expect([...depths(parents([...other, ...rings.toReversed()]))]).toEqual([0, 2, 1, 0]);
        expect([...parents([])]).toEqual([]);
    });

    it('tells rings apart that touch in a corner', () => {
        const outer = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
        const inner = reversed(Float64Array.of(0, 0, 5, 2, 2, 5));
        expect([...parents([outer, inner])]).toEqual([-1, 0]);
    });
});

describe('a tour', () => {
    it('visits every point once, whatever they are', () => {
        const point = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.double({ min: -1e6, max: 1e6, noNaN: true }));
        fc.assert(
            fc.property(fc.array(point, { maxLength: 40 }), (points) => {
                const xs = Float64Array.from(points, ([x]) => x);
                const ys = Float64Array.from(points, ([, y]) => y);
                const order = tour(xs, ys, 0, 0);
                expect([...order].sort((a, b) => a - b)).toEqual(points.map((_, i) => i));
            }),
            { numRuns: 300, seed: 4 },
        );
    });

    it('finds the shortest way through few points, by trying all, mostly', () => {
        const random = even(42);
        let shortest = 0;
        for (let round = 0; round < 50; round++) {
            const xs = Float64Array.from({ length: 7 }, () => random() * 100);
            const ys = Float64Array.from({ length: 7 }, () => random() * 100);
            const best = Math.min(...permutations(7).map((order) => tourLength(order, xs, ys, 0, 0)));
            const found = tourLength(tour(xs, ys, 0, 0), xs, ys, 0, 0);
            expect(found).toBeLessThan(1.25 * best);
            if (found < best * (1 + 1e-9)) shortest++;
        }
        expect(shortest).toBeGreaterThan(35);
    });

    it('is within a tenth of the expected shortest tour of many even points', () => {
        const random = even(7);
        const xs = Float64Array.from({ length: 5000 }, () => random() * 300);
        const ys = Float64Array.from({ length: 5000 }, () => random() * 200);
        // Beardwood, Halton, Hammersley (1959): 0.7124·√(n·A) for many points (constant from memory), and some for the border.
        const expected = 0.7124 * Math.sqrt(5000 * 60_000) * (1 + 0.33 / Math.sqrt(5000) ** 0.5);
        expect(tourLength(tour(xs, ys, 0, 0), xs, ys, 0, 0)).toBeLessThan(1.1 * expected);
    });
});

function permutations(count: number): number[][] {
    if (count === 1) return [[0]];
    return permutations(count - 1).flatMap((order) =>
        Array.from({ length: count }, (_, at) => order.toSpliced(at, 0, count - 1)),
    );
}

/** Small rings scattered over a board in the order of a file, each with a hole in it. */
function scattered(count: number): Region {
    const random = even(99);
    const rings: Ring[] = [];
    for (let i = 0; i < count; i++) {
        const [cx, cy] = [(i % 20) * 15 + random() * 4, Math.floor(i / 20) * 10 + random() * 3];
        rings.push(...circle(cx, cy, 5).rings, reversed(circle(cx, cy, 2).rings[0]!));
    }
    for (let i = rings.length - 1; i > 0; i--) {
        const j = Math.floor(random() * (i + 1));
        [rings[i], rings[j]] = [rings[j]!, rings[i]!];
    }
    return { rings };
}

describe('outlines', () => {
    it('go from inside to outside', () => {
        const paths = outlinePaths(dish(30, 30, 40));
        const reach = paths.map(({ points }) => Math.max(...points.filter((_, i) => i % 2 === 0)));
        expect(reach).toEqual(reach.toSorted((a, b) => a - b));
        expect(paths).toHaveLength(3);
    });

    it('never leave a hole for after the ring around it', () => {
        const region = scattered(60);
        const order = outlinePaths(region).map(({ points }) => points);
        const size = (points: Float64Array): number =>
            Math.max(...points.filter((_, i) => i % 2 === 0)) - Math.min(...points.filter((_, i) => i % 2 === 0));
        const middle = (points: Float64Array): number[] => [
            points.filter((_, i) => i % 2 === 0).reduce((a, b) => a + b) / (points.length / 2),
            points[1]!,
        ];
        order.forEach((hole, i) => {
            if (size(hole) > 3) return;
            const around = order.findIndex(
                (ring) => size(ring) > 3 && Math.hypot(middle(ring)[0]! - middle(hole)[0]!, ring[1]! - hole[1]!) < 4,
            );
            expect(around).toBeGreaterThan(i);
        });
    });

    it('travel far less than in the order of the file', () => {
        const region = scattered(300);
        const inFileOrder = travelLength(region.rings.map((ring) => pathOfRing(ring)));
        const ordered = travelLength(outlinePaths(region));
        expect(outlinePaths(region)).toHaveLength(600);
        expect(ordered).toBeLessThan(0.1 * inFileOrder);
    });

    it('start where the head comes from, and close', () => {
        const [path] = orderRings(circle(50, 50, 20), { x: 100, y: 50 });
        expect(path!.points[0]).toBeCloseTo(60, 1);
        expect(path!.points.at(-2)).toBe(path!.points[0]);
        expect(path!.points.at(-1)).toBe(path!.points[1]);
    });

    it('of a crowd in one corner and one ring far away are still found quickly', () => {
        const rings = Array.from({ length: 20_000 }, (_, i): Ring => {
            const [x, y] = [(i % 141) * 0.007, Math.floor(i / 141) * 0.007];
            return Float64Array.of(x, y, x + 0.003, y, x, y + 0.003);
        });
        rings.push(Float64Array.of(9e5, 9e5, 9.1e5, 9e5, 9e5, 9.1e5));
        expect(outlinePaths({ rings })).toHaveLength(20_001);
    });

    it('leave out rings that are none', () => {
        expect(
            outlinePaths({
                rings: [Float64Array.of(1, 1), Float64Array.of(0, 0, 1e308, 0, 1, 1), Float64Array.of(0, 0, Number.NaN, 0, 1, 1)],
            }),
        ).toEqual([]);
    });
});
