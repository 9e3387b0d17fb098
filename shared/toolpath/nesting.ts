import type { Ring } from '../geometry/region';

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

interface Bands {
    readonly edges: Float64Array;
    readonly owner: Uint32Array;
    edgesAt(y: number): Uint32Array;
}

function bandsOf(rings: readonly Ring[]): Bands {
    const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
    const edges = new Float64Array(4 * count);
    const owner = new Uint32Array(count);
    let minY = Number.POSITIVE_INFINITY;
    let maxY = Number.NEGATIVE_INFINITY;
    let at = 0;
    rings.forEach((ring, index) => {
        for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
            edges.set([ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!], 4 * at);
            owner[at++] = index;
            minY = Math.min(minY, ring[i + 1]!);
            maxY = Math.max(maxY, ring[i + 1]!);
        }
    });
    const bands = Math.max(1, Math.min(rings.length, 20_000));
    const height = (maxY - minY) / bands || 1;
    const bandOf = (y: number): number => Math.min(bands - 1, Math.max(0, Math.floor((y - minY) / height)));
    const starts = new Uint32Array(bands + 1);
    const each = (visit: (edge: number, band: number) => void): void => {
        for (let edge = 0; edge < count; edge++) {
            const a = bandOf(edges[4 * edge + 1]!);
            const b = bandOf(edges[4 * edge + 3]!);
            for (let band = Math.min(a, b); band <= Math.max(a, b); band++) visit(edge, band);
        }
    };
    each((_, band) => {
        starts[band + 1]! += 1;
    });
    for (let band = 0; band < bands; band++) starts[band + 1]! += starts[band]!;
    const next = starts.slice();
    const items = new Uint32Array(starts[bands]!);
    each((edge, band) => {
        items[next[band]!] = edge;
        next[band]! += 1;
    });
    return { edges, owner, edgesAt: (y) => items.subarray(starts[bandOf(y)]!, starts[bandOf(y) + 1]!) };
}
