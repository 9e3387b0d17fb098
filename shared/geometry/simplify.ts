import { unite } from './boolean';
import type { Region, Ring } from './region';

/** Drops vertices that stray less than `tolerance` mm from the line through those kept, then normalises again. */
export function simplify(region: Region, tolerance: number): Region {
    if (!(tolerance > 0) || !Number.isFinite(tolerance)) return region;
    const rings: Ring[] = [];
    for (const ring of region.rings) {
        const kept = simplifyRing(ring, tolerance);
        if (kept.length >= 6) rings.push(kept);
    }
    return unite(rings);
}

/** Douglas and Peucker's line simplification (1973), without recursion, on a closed ring. */
export function simplifyRing(ring: Ring, tolerance: number): Ring {
    const count = ring.length / 2;
    if (count <= 3) return ring;
    // Two points that surely stay: the first one and the one farthest from it.
    let far = 0;
    let farthest = -1;
    for (let i = 1; i < count; i++) {
        const d = (ring[2 * i]! - ring[0]!) ** 2 + (ring[2 * i + 1]! - ring[1]!) ** 2;
        if (d > farthest) {
            farthest = d;
            far = i;
        }
    }
    const keep = new Uint8Array(count);
    keep[0] = 1;
    keep[far] = 1;
    const limit = tolerance * tolerance;
    const spans = [0, far, far, count];
    while (spans.length > 0) {
        const to = spans.pop()!;
        const from = spans.pop()!;
        const ax = ring[2 * from]!;
        const ay = ring[2 * from + 1]!;
        const end = to === count ? 0 : to;
        const dx = ring[2 * end]! - ax;
        const dy = ring[2 * end + 1]! - ay;
        const length = dx * dx + dy * dy;
        let worst = limit;
        let split = -1;
        for (let i = from + 1; i < to; i++) {
            const px = ring[2 * i]! - ax;
            const py = ring[2 * i + 1]! - ay;
            const t = length > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / length)) : 0;
            const d = (px - t * dx) ** 2 + (py - t * dy) ** 2;
            if (d > worst) {
                worst = d;
                split = i;
            }
        }
        if (split < 0) continue;
        keep[split] = 1;
        spans.push(from, split, split, to);
    }
    const out = new Float64Array(ring.length);
    let used = 0;
    for (let i = 0; i < count; i++) {
        if (keep[i] === 0) continue;
        out[used++] = ring[2 * i]!;
        out[used++] = ring[2 * i + 1]!;
    }
    return out.slice(0, used);
}
