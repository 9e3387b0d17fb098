import type { Bounds, Region, Ring } from './region';

/** Signed area in mm2: positive for an outer ring, negative for a hole. */
export function signedArea(ring: Ring): number {
    // Relative to the first point, so that a small ring far from the origin keeps its digits.
    const x0 = ring[0] ?? 0;
    const y0 = ring[1] ?? 0;
    let twice = 0;
    for (let i = 2; i + 3 < ring.length; i += 2) {
        twice += (ring[i]! - x0) * (ring[i + 3]! - y0) - (ring[i + 2]! - x0) * (ring[i + 1]! - y0);
    }
    return twice / 2;
}

/** Area in mm2. */
export function area(region: Region): number {
    let sum = 0;
    for (const ring of region.rings) sum += signedArea(ring);
    return sum;
}

/** Length of a closed ring in mm. */
export function ringLength(ring: Ring): number {
    let sum = 0;
    const size = ring.length;
    for (let i = 0; i < size; i += 2) {
        const next = i + 2 < size ? i + 2 : 0;
        sum += Math.hypot(ring[next]! - ring[i]!, ring[next + 1]! - ring[i + 1]!);
    }
    return sum;
}

/** Length of all edges in mm, holes included. */
export function perimeter(region: Region): number {
    let sum = 0;
    for (const ring of region.rings) sum += ringLength(ring);
    return sum;
}

export function vertexCount(region: Region): number {
    let count = 0;
    for (const ring of region.rings) count += ring.length / 2;
    return count;
}

export function isEmpty(region: Region): boolean {
    return region.rings.length === 0;
}

/** Bounds in mm; undefined for an empty region. */
export function bounds(region: Region): Bounds | undefined {
    return boundsOfRings(region.rings);
}

export function boundsOfRings(rings: readonly Ring[]): Bounds | undefined {
    let minX = Number.POSITIVE_INFINITY;
    let minY = Number.POSITIVE_INFINITY;
    let maxX = Number.NEGATIVE_INFINITY;
    let maxY = Number.NEGATIVE_INFINITY;
    for (const ring of rings) {
        for (let i = 0; i + 1 < ring.length; i += 2) {
            const x = ring[i]!;
            const y = ring[i + 1]!;
            if (x < minX) minX = x;
            if (x > maxX) maxX = x;
            if (y < minY) minY = y;
            if (y > maxY) maxY = y;
        }
    }
    return minX <= maxX ? { minX, minY, maxX, maxY } : undefined;
}

/** Whether a point in mm lies in the region. On an edge itself the answer may be either. */
export function contains(region: Region, x: number, y: number): boolean {
    let winding = 0;
    for (const ring of region.rings) winding += windingOf(ring, x, y);
    return winding !== 0;
}

/** How often a ring winds around a point, positive in the sense of an outer ring. */
export function windingOf(ring: Ring, x: number, y: number): number {
    let winding = 0;
    const size = ring.length;
    let ax = ring[size - 2]!;
    let ay = ring[size - 1]!;
    for (let i = 0; i < size; i += 2) {
        const bx = ring[i]!;
        const by = ring[i + 1]!;
        // Only edges that a ray to the left crosses count; `side` says on which side of it the point lies.
        if (ay > y !== by > y) {
            const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
            if (by < ay) {
                if (side > 0) winding++;
            } else if (side < 0) {
                winding--;
            }
        }
        ax = bx;
        ay = by;
    }
    return winding;
}

/** Centre of area in mm; undefined for an empty region. */
export function centroid(region: Region): { x: number; y: number } | undefined {
    const first = region.rings[0];
    if (first === undefined) return undefined;
    const x0 = first[0]!;
    const y0 = first[1]!;
    let twice = 0;
    let momentX = 0;
    let momentY = 0;
    for (const ring of region.rings) {
        const size = ring.length;
        let fromX = ring[size - 2]! - x0;
        let fromY = ring[size - 1]! - y0;
        for (let i = 0; i < size; i += 2) {
            const toX = ring[i]! - x0;
            const toY = ring[i + 1]! - y0;
            const cross = fromX * toY - toX * fromY;
            twice += cross;
            momentX += (fromX + toX) * cross;
            momentY += (fromY + toY) * cross;
            fromX = toX;
            fromY = toY;
        }
    }
    if (twice === 0) return { x: x0, y: y0 };
    return { x: x0 + momentX / (3 * twice), y: y0 + momentY / (3 * twice) };
}

/** The corners of a box as a ring. */
export function cornersOf({ minX, minY, maxX, maxY }: Bounds): Ring {
    return Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);
}
