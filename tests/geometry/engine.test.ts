import { describe, expect, test } from 'vitest';
import { intersect, subtract, union, unite } from '../../shared/geometry/boolean';
import { prepareGeometry } from '../../shared/geometry/engine';
import { area, signedArea, vertexCount, windingOf } from '../../shared/geometry/measure';
import { grow } from '../../shared/geometry/offset';
import { tangledRegion } from '../../shared/geometry/region';
import { rectangle } from '../../shared/geometry/shapes';
import { widen } from '../../shared/geometry/widen';
import { archipelago, island, seeded } from './shapes-at-random';
import { wasmFile } from './wasm-file';

const random = seeded(1);
const coasts = [island(50, 50, 40, 3000, random), island(60, 55, 40, 3000, random)];

/** What a heavy plan does, as numbers. */
function work(): number[] {
    const [a, b] = coasts.map((ring) => unite([ring]));
    return [union([a!, b!]), intersect(a!, b!), subtract(a!, b!), grow(union([a!, b!]), -0.2), grow(a!, 0.2)].map(area);
}

test('everything works before and without the compiled library, and gives the same with it', async () => {
    const before = work();
    expect(await prepareGeometry()).toBe('clipper2-ts');
    expect(await prepareGeometry({ binary: new Uint8Array([1, 2, 3]) })).toBe('clipper2-ts');
    expect(await prepareGeometry({ binary: wasmFile() })).toBe('clipper2-wasm');
    expect(await prepareGeometry()).toBe('clipper2-wasm');
    const after = work();
    for (let i = 0; i < after.length; i++) expect(after[i]! / before[i]!).toBeCloseTo(1, 6);
});

describe('bounded', { timeout: 120_000 }, () => {
    test('two hundred thousand separate shapes, without and with touching', () => {
        const squares = Array.from({ length: 200_000 }, (_, k) => {
            const x = (k % 500) * 2;
            const y = Math.floor(k / 500) * 2;
            return Float64Array.of(x, y, x + 1, y, x + 1, y + 1, x, y + 1);
        });
        expect(area(unite(squares))).toBeCloseTo(200_000, 6);
        const strip = Array.from({ length: 20_000 }, (_, k) => rectangle(k, 0, 1.5, 1).rings[0]!);
        expect(area(unite(strip))).toBeCloseTo(20_000.5, 6);
    });

    test('thousands of holes in an outline of thousands of points', () => {
        const outline = island(150, 150, 140, 5000, random);
        const inner = island(150, 150, 20, 5000, random);
        const dots = Array.from({ length: 4000 }, (_, k) => {
            const x = 145 + (k % 63) * 0.15;
            const y = 145 + Math.floor(k / 63) * 0.15;
            return Float64Array.of(x, y, x + 0.1, y, x, y + 0.1);
        }).filter((dot) => windingOf(inner, dot[0]!, dot[1]!) !== 0 && windingOf(inner, dot[2]!, dot[3]!) !== 0);
        expect(dots.length).toBeGreaterThan(2000);
        const region = subtract(unite([outline]), unite(dots));
        expect(area(region)).toBeCloseTo(Math.abs(signedArea(outline)) - dots.length * 0.005, 3);
        expect(region.rings.length).toBe(1 + dots.length);
    });

    test('a million points', () => {
        const coast = unite(archipelago(1_000_000));
        expect(vertexCount(coast)).toBeGreaterThan(950_000);
        const whole = rectangle(-5, -5, 310, 310);
        expect(area(subtract(whole, coast)) + area(coast)).toBeCloseTo(area(whole), 3);
    });

    test('two coasts of a million points that cross each other', () => {
        const [a, b] = [3, 4].map((seed) => island(145 + 2 * seed, 150, 140, 1_000_000, seeded(seed)));
        const [one, other] = [unite([a!]), unite([b!])];
        const both = union([one, other]);
        expect(vertexCount(both)).toBeGreaterThan(800_000);
        expect(area(subtract(one, other)) + area(other)).toBeCloseTo(area(both), 2);
        // What is finer than the tolerance is left out before it is moved.
        const inside = grow(both, -0.025);
        expect(vertexCount(inside)).toBeLessThan(100_000);
        expect(area(inside) / area(both)).toBeCloseTo(1, 2);
        // Where each point strays by more than they lie apart, nothing ends in time.
        const astray = a!.map((value) => value + (random() - 0.5) * 0.004);
        const begun = performance.now();
        expect(unite([astray])).toBe(tangledRegion);
        expect(performance.now() - begun).toBeLessThan(10_000);
    });

    test('a tangle is refused and not begun', () => {
        const scribble = Float64Array.from({ length: 40_000 }, () => random() * 100);
        const begun = performance.now();
        expect(unite([scribble])).toBe(tangledRegion);
        expect(widen([{ points: scribble, closed: false }], { width: 0.01, cap: 'butt', join: 'round', miterLimit: 4 })).toBe(
            tangledRegion,
        );
        // Far below what working it out would take.
        expect(performance.now() - begun).toBeLessThan(20_000);
    });

    test('a dense but honest drawing is not', () => {
        const strokes = Array.from({ length: 300 }, (_, k) => ({
            points: k % 2 === 0 ? Float64Array.of(0, k / 2, 150, k / 2) : Float64Array.of(k / 2, 0, k / 2, 150),
            closed: false,
        }));
        const hatch = widen(strokes, { width: 0.2, cap: 'butt', join: 'miter', miterLimit: 4 });
        expect(area(hatch)).toBeCloseTo(300 * 30 - 150 * 150 * 0.04 + 2 * (150 * 0.02), -1);
    });

    test('many edges side by side are swept the other way', () => {
        // A comb of 20 000 upright teeth on a bar: sweeping down would meet all of them at every corner.
        const teeth: number[] = [0, -1];
        for (let k = 0; k < 20_000; k++) teeth.push(k * 0.01, 100 - random(), k * 0.01 + 0.005, 1 + random());
        const comb = Float64Array.from([...teeth, 200, -1]);
        const region = unite([comb, rectangle(-1, -2, 202, 2).rings[0]!]);
        expect(area(region)).toBeGreaterThan(400);
        expect(area(unite(region.rings, 'evenodd'))).toBeCloseTo(area(region), 3);
    });
});
