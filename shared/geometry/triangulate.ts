import earcut from 'earcut';
import { islands } from './islands';
import type { Region } from './region';

/** A region as triangles: places as x0, y0, x1, y1, … in mm, and three indices of places for each triangle. */
export interface Triangles {
    readonly points: Float64Array;
    readonly corners: Uint32Array;
}

/**
 * The region cut into triangles whose areas make up its own. Uses no places but the region's; triangles turn as its outer rings do.
 * O(n log n) in its places for common art.
 */
export function triangulate(region: Region): Triangles {
    const points: number[] = [];
    const corners: number[] = [];
    for (const { rings } of islands(region)) {
        const first = points.length / 2;
        const flat: number[] = [];
        const holes: number[] = [];
        for (const ring of rings) {
            if (flat.length > 0) holes.push(flat.length / 2);
            for (const value of ring) flat.push(value);
        }
        const found = earcut(flat, holes, 2);
        for (let i = 0; i + 2 < found.length; i += 3) {
            const [a, b, c] = [found[i]!, found[i + 1]!, found[i + 2]!];
            const turn =
                (flat[2 * b]! - flat[2 * a]!) * (flat[2 * c + 1]! - flat[2 * a + 1]!) -
                (flat[2 * c]! - flat[2 * a]!) * (flat[2 * b + 1]! - flat[2 * a + 1]!);
            if (turn > 0) corners.push(first + a, first + b, first + c);
            else if (turn < 0) corners.push(first + a, first + c, first + b);
        }
        for (const value of flat) points.push(value);
    }
    return { points: Float64Array.from(points), corners: Uint32Array.from(corners) };
}
