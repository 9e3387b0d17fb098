import { contains } from './measure';
import type { Region } from './region';

/** Distance in mm from a point to the nearest edge of a region, inside or outside; infinite for an empty region. */
export function distanceToEdge(region: Region, x: number, y: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (const ring of region.rings) {
        const size = ring.length;
        let ax = ring[size - 2]!;
        let ay = ring[size - 1]!;
        for (let i = 0; i < size; i += 2) {
            const bx = ring[i]!;
            const by = ring[i + 1]!;
            const square = squareToSegment(x, y, ax, ay, bx, by);
            if (square < least) least = square;
            ax = bx;
            ay = by;
        }
    }
    return Math.sqrt(least);
}

/** The same with a sign: positive inside the region, negative outside. */
export function depthInside(region: Region, x: number, y: number): number {
    const distance = distanceToEdge(region, x, y);
    return contains(region, x, y) ? distance : -distance;
}

/** Square of the distance from a point to the segment from a to b. */
export function squareToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
    const dx = bx - ax;
    const dy = by - ay;
    const length = dx * dx + dy * dy;
    const t = length > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
    const px = x - ax - t * dx;
    const py = y - ay - t * dy;
    return px * px + py * py;
}
