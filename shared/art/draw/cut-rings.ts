import type { Bounds, Ring } from '../../geometry/region';

/**
 * Rings cut to an upright box (Sutherland and Hodgman, 1974), in time that grows with their points,
 * and before they reach whole numbers: so coordinates may be as large as they like. Edges that
 * run along the box's sides stay; inside the box every fill rule gives what it gave.
 */
export function cutRings(rings: readonly Ring[], box: Bounds): readonly Ring[] {
    return rings.map((ring) => cutRing(ring, box)).filter((ring) => ring.length >= 6);
}

function cutRing(ring: Ring, { minX, minY, maxX, maxY }: Bounds): Ring {
    let points: ArrayLike<number> = ring;
    for (let i = 0; i < ring.length; i += 2) {
        const x = ring[i]!;
        const y = ring[i + 1]!;
        if (x >= minX && x <= maxX && y >= minY && y <= maxY) continue;
        points = half(points, 0, minX, 1);
        points = half(points, 0, maxX, -1);
        points = half(points, 1, minY, 1);
        points = half(points, 1, maxY, -1);
        return Float64Array.from(points);
    }
    return ring;
}

/** Keeps what lies on one side of a line across an axis (0 x, 1 y): above `at` for sign 1, below for -1. */
function half(points: ArrayLike<number>, axis: 0 | 1, at: number, sign: 1 | -1): number[] {
    const kept: number[] = [];
    const size = points.length;
    if (size === 0) return kept;
    let fromX = points[size - 2]!;
    let fromY = points[size - 1]!;
    let from = sign * ((axis === 0 ? fromX : fromY) - at);
    for (let i = 0; i < size; i += 2) {
        const x = points[i]!;
        const y = points[i + 1]!;
        const to = sign * ((axis === 0 ? x : y) - at);
        if (from >= 0 !== to >= 0) {
            const share = from / (from - to);
            // On the line itself to the last digit, so that the next side sees it so.
            if (axis === 0) kept.push(at, fromY + share * (y - fromY));
            else kept.push(fromX + share * (x - fromX), at);
        }
        if (to >= 0) kept.push(x, y);
        fromX = x;
        fromY = y;
        from = to;
    }
    return kept;
}
