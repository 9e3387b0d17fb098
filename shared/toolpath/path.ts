import type { Ring } from '../geometry/region';

/** A path of straight pieces: x0, y0, x1, y1, … in mm. It is closed if its last point is its first. */
export interface Path {
    readonly points: Float64Array;
    /** For each piece 1 if it burns, 0 if the beam is off over it (a tab); all burn if absent. */
    readonly lit?: Uint8Array;
    /** For each piece the part of the set power with which it burns; all of it if absent. */
    readonly share?: Float64Array;
}

/** A ring as a closed path that starts at one of its points. */
export function pathOfRing(ring: Ring, start = 0): Path {
    const count = ring.length / 2;
    const points = new Float64Array(ring.length + 2);
    for (let i = 0; i <= count; i++) {
        const from = (start + i) % count;
        points[2 * i] = ring[2 * from]!;
        points[2 * i + 1] = ring[2 * from + 1]!;
    }
    return { points };
}

/** Length (mm) of the pieces that burn and of those that do not. */
export function pathLength(path: Path): { lit: number; dark: number } {
    let lit = 0;
    let dark = 0;
    const { points } = path;
    for (let i = 0; i + 3 < points.length; i += 2) {
        const length = Math.hypot(points[i + 2]! - points[i]!, points[i + 3]! - points[i + 1]!);
        if (path.lit === undefined || path.lit[i / 2] === 1) lit += length;
        else dark += length;
    }
    return { lit, dark };
}
