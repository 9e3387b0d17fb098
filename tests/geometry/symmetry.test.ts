import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract, union, unite } from '../../shared/geometry/boolean';
import { area } from '../../shared/geometry/measure';
import { emptyRegion, type Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { reflection, roundOrder, symmetryOf } from '../../shared/geometry/symmetry';
import { mirror, rotate, transform, translate } from '../../shared/geometry/transform';
import { archipelago, island, regions, seeded } from './shapes-at-random';

/** A star with its first tip towards the right, about (60, 40). */
function star(tips: number, outer: number, inner: number): Region {
    const points = Array.from({ length: 2 * tips }, (_, k) => {
        const radius = k % 2 === 0 ? outer : inner;
        return [60 + radius * Math.cos((Math.PI * k) / tips), 40 + radius * Math.sin((Math.PI * k) / tips)];
    });
    return unite([Float64Array.from(points.flat())]);
}

/** A pinwheel: turns, but no mirroring. */
function pinwheel(arms: number): Region {
    const arm = unite([Float64Array.of(5, -5, 40, 10, 40, 14, 5, 5)]);
    return union([circle(0, 0, 14), ...Array.from({ length: arms }, (_, k) => rotate(arm, (2 * Math.PI * k) / arms))]);
}

describe('orders of turning', () => {
    test.each([2, 3, 4, 5, 6, 7, 11, 12, 24, 36])('a star of %i tips', (tips) => {
        const { rotation: turn, axis } = symmetryOf(star(tips, 30, 20));
        expect(turn).toMatchObject({ order: tips, symmetric: true });
        expect(axis.symmetric).toBe(true);
    });

    test.each([3, 4, 5, 8])('a pinwheel of %i arms turns but has no axis', (arms) => {
        const found = symmetryOf(rotate(pinwheel(arms), 0.4));
        expect(found.rotation).toMatchObject({ order: arms, symmetric: true });
        expect([found.mirror.symmetric, found.axis.symmetric]).toEqual([false, false]);
    });

    test('circles and rings look the same under any turn', () => {
        for (const region of [circle(10, 20, 50), subtract(circle(0, 0, 50), circle(0, 0, 30))]) {
            const found = symmetryOf(region);
            expect(found.rotation).toMatchObject({ order: roundOrder, symmetric: true });
            expect(found.mirror.symmetric).toBe(true);
        }
    });

    test('a circle with a dot beside its middle does not', () => {
        const found = symmetryOf(subtract(circle(0, 0, 50), circle(10, 0, 2)));
        expect(found.rotation.order).toBe(1);
        expect(found.axis.symmetric).toBe(true);
    });

    test('a square turned anyhow', () => {
        const found = symmetryOf(rotate(rectangle(0, 0, 60, 60), 0.3));
        expect(found.rotation.order).toBe(4);
        expect(found.mirror.symmetric).toBe(false);
    });
});

describe('mirroring', () => {
    test('finds the axis, wherever it points', () => {
        fc.assert(
            fc.property(fc.double({ min: 0, max: Math.PI, noNaN: true }), (angle) => {
                const half = unite([island(0, 0, 40, 300, seeded(9))]);
                const whole = union([half, transform(half, reflection(angle, 55, 10))]);
                const found = symmetryOf(whole).axis;
                expect(found.symmetric).toBe(true);
                const off = Math.abs(((found.angle - angle + 1.5 * Math.PI) % Math.PI) - Math.PI / 2);
                expect(off).toBeLessThan(0.0003);
            }),
            { numRuns: 20, seed: 91 },
        );
    });

    test('a leaf is symmetric about the upright until it gets a bite', () => {
        const leaf = union([star(5, 30, 12), rectangle(59, 40, 2, 40)]);
        const upright = rotate(star(5, 30, 12), -Math.PI / 2, 60, 40);
        expect(symmetryOf(upright).mirror.symmetric).toBe(true);
        expect(symmetryOf(leaf).mirror.symmetric).toBe(false);
        const bitten = symmetryOf(subtract(upright, circle(50, 45, 1.5))).mirror;
        expect(bitten.symmetric).toBe(false);
        expect(bitten.residual).toBeGreaterThan(2 * 1.5);
        expect(bitten.residual).toBeLessThan(2 * Math.PI * 0.75 ** 2 + 8);
    });

    test('the tolerance decides what counts', () => {
        const nearly = union([rectangle(0, 0, 50, 30), rectangle(50, 10, 0.3, 10)]);
        expect(symmetryOf(nearly, 0.1).mirror.symmetric).toBe(false);
        expect(symmetryOf(nearly, 0.3).mirror.symmetric).toBe(true);
    });

    test('the residual is twice what has no counterpart', () => {
        const plain = symmetryOf(rectangle(0, 0, 50, 30)).mirror;
        expect(plain).toEqual({ residual: 0, symmetric: true });
        // About its centre of area at x = 1250/65: what lies beyond the images of the ends.
        const region = unite([Float64Array.of(0, 0, 30, 0, 30, 10, 0, 10), Float64Array.of(0, 10, 10, 10, 10, 20, 0, 20)]);
        const { x } = { x: (300 * 15 + 100 * 5) / 400 };
        const image = mirror(region, x);
        const expected = area(subtract(region, image)) + area(subtract(image, region));
        expect(symmetryOf(region).mirror.residual / expected).toBeCloseTo(1, 2);
    });
});

test('moving and turning change no verdict', () => {
    fc.assert(
        fc.property(regions(), fc.double({ min: 0, max: 6, noNaN: true }), (region, angle) => {
            const a = symmetryOf(region);
            const b = symmetryOf(translate(rotate(region, angle), 33, -71));
            expect(b.rotation.order).toBe(a.rotation.order);
            expect(b.axis.symmetric).toBe(a.axis.symmetric);
        }),
        { numRuns: 25, seed: 92 },
    );
});

test('heavy art', () => {
    const half = island(150, 150, 140, 50_000, seeded(3));
    const other = half.map((value, i) => (i % 2 === 0 ? 310 - value : value));
    expect(symmetryOf(unite([half, other])).mirror.symmetric).toBe(true);
    const found = symmetryOf(unite(archipelago(50_000)));
    expect([found.mirror.symmetric, found.axis.symmetric, found.rotation.order]).toEqual([false, false, 1]);
});

test('nothing is not symmetric', () => {
    const found = symmetryOf(emptyRegion);
    expect([found.mirror.symmetric, found.rotation.order]).toEqual([false, 1]);
    expect(symmetryOf(rectangle(0, 0, 1, 1), Number.NaN).mirror.symmetric).toBe(false);
});
