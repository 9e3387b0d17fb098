import { EdgeIndex } from '../geometry/edge-index';
import { signedArea } from '../geometry/measure';
import type { Ring } from '../geometry/region';

/** For each ring the index of the smallest ring around it, or −1. The rings must not cross. */
export function parents(rings: readonly Ring[]): Int32Array {
    const found = new Int32Array(rings.length).fill(-1);
    if (rings.length < 2) return found;
    const index = new EdgeIndex(rings);
    const areas = rings.map((ring) => Math.abs(signedArea(ring)));
    const odd = new Set<number>();
    rings.forEach((ring, inner) => {
        odd.clear();
        // The middle of an edge, since rings may touch in a corner.
        index.crossings((ring[0]! + ring[2]!) / 2, (ring[1]! + ring[3]!) / 2, (outer) => {
            if (outer !== inner && !odd.delete(outer)) odd.add(outer);
        });
        for (const outer of odd) if (found[inner] === -1 || areas[outer]! < areas[found[inner]!]!) found[inner] = outer;
    });
    return found;
}

/** How many rings lie around each. */
export function depths(parent: Int32Array): Int32Array {
    const depth = new Int32Array(parent.length).fill(-1);
    for (let i = 0; i < parent.length; i++) {
        let steps = 0;
        let at = i;
        // Up to the first that is known already.
        while (depth[at] === -1 && parent[at]! >= 0) {
            at = parent[at]!;
            steps++;
        }
        if (depth[at] === -1) depth[at] = 0;
        for (let down = i, deep = depth[at]! + steps; down !== at; down = parent[down]!, deep--) depth[down] = deep;
    }
    return depth;
}
