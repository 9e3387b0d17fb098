import fc from 'fast-check';
import { unite } from '../../shared/geometry/boolean';
import type { Region } from '../../shared/geometry/region';

/** Rings on a coarse lattice, in mm: shared corners, edges that lie on each other, spikes and repeated points are common. */
export function latticeRings(size = 12, step = 0.1): fc.Arbitrary<Float64Array[]> {
    const place = fc.integer({ min: 0, max: size }).map((n) => n * step);
    const ring = fc
        .array(place, { minLength: 6, maxLength: 16 })
        .map((numbers) => Float64Array.from(numbers.slice(0, numbers.length & ~1)));
    return fc.array(ring, { minLength: 1, maxLength: 5 });
}

/** Rings with corners anywhere within a square of the given side in mm. */
export function looseRings(side = 50): fc.Arbitrary<Float64Array[]> {
    const place = fc.double({ min: 0, max: side, noNaN: true });
    const ring = fc
        .array(place, { minLength: 6, maxLength: 20 })
        .map((numbers) => Float64Array.from(numbers.slice(0, numbers.length & ~1)));
    return fc.array(ring, { minLength: 1, maxLength: 6 });
}

export function regions(side = 50): fc.Arbitrary<Region> {
    return looseRings(side).map((rings) => unite(rings, 'evenodd'));
}

/** Numbers from 0 to 1 that are always the same for a seed. */
export function seeded(seed: number): () => number {
    let state = seed >>> 0;
    return () => {
        state = (state + 0x6d2b79f5) | 0;
        let t = Math.imul(state ^ (state >>> 15), 1 | state);
        t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
        return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
    };
}

/** A rugged island about a middle, in mm: its radius wanders as a coastline does. Never crosses itself. */
export function island(x: number, y: number, radius: number, count: number, random: () => number): Float64Array {
    const profile = new Float64Array(2 ** Math.ceil(Math.log2(count)));
    let swing = 0.5;
    for (let step = profile.length; step > 1; step /= 2) {
        for (let i = step / 2; i < profile.length; i += step) {
            const between = (profile[i - step / 2]! + profile[(i + step / 2) % profile.length]!) / 2;
            profile[i] = between + (random() - 0.5) * swing;
        }
        swing /= 2;
    }
    const ring = new Float64Array(2 * count);
    for (let i = 0; i < count; i++) {
        const angle = (2 * Math.PI * i) / count;
        const reach = radius * Math.min(1, Math.max(0.2, 0.65 + profile[Math.floor((i * profile.length) / count)]!));
        ring[2 * i] = x + reach * Math.cos(angle);
        ring[2 * i + 1] = y + reach * Math.sin(angle);
    }
    return ring;
}

/** Islands of 250 points each, side by side within a square of 300 mm, about `total` points in all. */
export function archipelago(total: number, seed = 1): Float64Array[] {
    const random = seeded(seed);
    const across = Math.max(1, Math.round(Math.sqrt(total / 250)));
    const cell = 300 / across;
    const rings: Float64Array[] = [];
    for (let row = 0; row < across; row++) {
        for (let column = 0; column < across; column++) {
            rings.push(island((column + 0.5) * cell, (row + 0.5) * cell, cell * 0.42, 250, random));
        }
    }
    return rings;
}
