import fc from 'fast-check';
import { expect, test } from 'vitest';
import { subtract, unite } from '../../shared/geometry/boolean';
import { distanceToEdge } from '../../shared/geometry/distance';
import { area, perimeter, vertexCount } from '../../shared/geometry/measure';
import { emptyRegion } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { simplify, simplifyRing } from '../../shared/geometry/simplify';
import { rotate } from '../../shared/geometry/transform';
import { archipelago, island, regions, seeded } from './shapes-at-random';

test('no point strays from the new outline by more than the tolerance', () => {
    const random = seeded(81);
    for (let run = 0; run < 30; run++) {
        const ring = run % 2 === 0 ? island(50, 50, 40, 700, random) : Float64Array.from({ length: 200 }, () => random() * 3);
        const tolerance = [0.001, 0.01, 0.1, 1][run % 4]!;
        const light = simplifyRing(ring, tolerance);
        for (let i = 0; i < ring.length; i += 2) {
            expect(distanceToEdge({ rings: [light] }, ring[i]!, ring[i + 1]!)).toBeLessThanOrEqual(tolerance * 1.000_001);
        }
    }
});

test('the area changes by less than the tolerance along the edge', () => {
    fc.assert(
        fc.property(regions(), fc.constantFrom(0.001, 0.01, 0.1), (region, tolerance) => {
            expect(Math.abs(area(simplify(region, tolerance)) - area(region))).toBeLessThanOrEqual(
                tolerance * perimeter(region) + 1e-4,
            );
        }),
        { numRuns: 200, seed: 82 },
    );
});

test('corners stay, and points that say nothing go', () => {
    expect(simplify(rectangle(0, 0, 10, 10), 0.1)).toEqual(rectangle(0, 0, 10, 10));
    const fine = circle(0, 0, 100, 1e-5);
    expect(vertexCount(simplify(fine, 0.005))).toBeLessThan(1.6 * vertexCount(circle(0, 0, 100, 0.005)));
    expect(vertexCount(fine)).toBeGreaterThan(4000);
});

test('a spike that turns back on itself is not cut short', () => {
    const spike = Float64Array.of(0, 0, 10, 0, 10, 0.001, 20, 0.0005, 10, 0.002, 10, 10, 0, 10);
    expect(distanceToEdge({ rings: [simplifyRing(spike, 0.01)] }, 20, 0.0005)).toBeLessThan(0.01);
});

test('rings that meet by it are normalised again', () => {
    const coast = unite(archipelago(20_000));
    const light = simplify(coast, 0.3);
    expect(vertexCount(light)).toBeLessThan(vertexCount(coast) / 2);
    expect(area(unite(light.rings, 'evenodd'))).toBeCloseTo(area(light), 3);
});

test('a thin ring whose two edges come to cross is normalised again', () => {
    const thin = subtract(circle(0, 0, 100, 1e-4), rotate(circle(0, 0, 99.98, 1e-4), 0.013));
    const light = simplify(thin, 0.05);
    expect(vertexCount(light)).toBeLessThan(vertexCount(thin) / 4);
    expect(area(unite(light.rings, 'evenodd'))).toBeCloseTo(area(light), 6);
    expect(area(unite(light.rings, 'nonzero'))).toBeCloseTo(area(light), 6);
});

test('numbers that make no sense leave all as it is', () => {
    const square = rectangle(0, 0, 1, 1);
    for (const tolerance of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) expect(simplify(square, tolerance)).toBe(square);
    expect(simplify(emptyRegion, 1)).toBe(emptyRegion);
});
