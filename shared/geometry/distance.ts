import { subtract } from './boolean';
import { EdgeIndex } from './edge-index';
import { contains, isEmpty } from './measure';
import type { Region, Ring } from './region';
import { squareToSegment } from './segment';

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
            least = Math.min(least, squareToSegment(x, y, ax, ay, bx, by));
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

/**
 * How far a region stays inside a boundary, such as a blank: the least distance in mm between
 * their edges, or, negative, how far it reaches beyond. Infinite if either is empty.
 */
export function margin(region: Region, boundary: Region): number {
    if (isEmpty(region) || isEmpty(boundary)) return Number.POSITIVE_INFINITY;
    const beyond = subtract(region, boundary);
    if (isEmpty(beyond)) return between(region.rings, boundary.rings);
    const edges = new EdgeIndex(boundary.rings);
    let farthest = 0;
    for (const ring of beyond.rings) {
        for (let i = 0; i < ring.length; i += 2) farthest = Math.max(farthest, edges.distance(ring[i]!, ring[i + 1]!));
    }
    return -farthest;
}

/** Least distance in mm between the edges of two regions that do not cross; infinite if either is empty. */
export function edgeDistance(a: Region, b: Region): number {
    return between(a.rings, b.rings);
}

/** Where the edges of two regions come nearest: at a corner of one of them. */
export interface Approach {
    readonly distance: number;
    readonly x: number;
    readonly y: number;
}

/** The place where the edges of two regions that do not cross come nearest, mm; undefined where they stay further apart than `within`. */
export function approach(a: Region, b: Region, within: number): Approach | undefined {
    let nearest: Approach | undefined;
    for (const [corners, others] of [
        [a, b],
        [b, a],
    ] as const) {
        const edges = new EdgeIndex(others.rings);
        for (const ring of corners.rings) {
            for (let i = 0; i < ring.length && nearest?.distance !== 0; i += 2) {
                const distance = edges.distance(ring[i]!, ring[i + 1]!, nearest?.distance ?? within);
                if (distance < (nearest?.distance ?? within)) nearest = { distance, x: ring[i]!, y: ring[i + 1]! };
            }
        }
    }
    return nearest;
}

/** Edges that do not cross are nearest at a corner of one of them. */
function between(a: readonly Ring[], b: readonly Ring[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (const [corners, others] of [
        [a, b],
        [b, a],
    ] as const) {
        const edges = new EdgeIndex(others);
        for (const ring of corners) {
            for (let i = 0; i < ring.length && least > 0; i += 2) {
                least = Math.min(least, edges.distance(ring[i]!, ring[i + 1]!, least));
            }
        }
    }
    return least;
}
