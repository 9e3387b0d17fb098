import type { Ring } from '../geometry/region';
import { bandsOf } from './bands';

/**
 * For each ring the index of the smallest ring around it, or −1. The rings must not cross.
 * Edges are kept in level bands, so that a ring is only tested against the edges beside it.
 */
export function parents(rings: readonly Ring[]): Int32Array {
    const found = new Int32Array(rings.length).fill(-1);
    if (rings.length < 2) return found;
    const bands = bandsOf(rings);
    const areas = rings.map((ring) => Math.abs(shoelace(ring)));
    const odd = new Set<number>();
    rings.forEach((ring, index) => {
        // The middle of an edge, since rings may touch in a corner.
        const x = (ring[0]! + ring[2]!) / 2;
        const y = (ring[1]! + ring[3]!) / 2;
        odd.clear();
        for (const at of bands.edgesAt(y)) {
            const owner = bands.owner[at]!;
            if (owner === index || !isLeftOf(bands.edges, 4 * at, x, y)) continue;
            if (!odd.delete(owner)) odd.add(owner);
        }
        for (const owner of odd) if (found[index] === -1 || areas[owner]! < areas[found[index]!]!) found[index] = owner;
    });
    return found;
}

/** How many rings lie around each. */
export function depths(parent: Int32Array): Int32Array {
    const depth = new Int32Array(parent.length);
    for (let i = 0; i < parent.length; i++)
        for (let at = parent[i]!; at >= 0 && depth[i]! <= parent.length; at = parent[at]!) depth[i]! += 1;
    return depth;
}

function shoelace(ring: Ring): number {
    let twice = 0;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
        twice += ring[j]! * ring[i + 1]! - ring[i]! * ring[j + 1]!;
    return twice / 2;
}

function isLeftOf(edges: Float64Array, at: number, x: number, y: number): boolean {
    const y0 = edges[at + 1]!;
    const y1 = edges[at + 3]!;
    if (y0 > y === y1 > y) return false;
    return edges[at]! + ((y - y0) / (y1 - y0)) * (edges[at + 2]! - edges[at]!) < x;
}
