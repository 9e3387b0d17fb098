import type { Ring } from '../geometry/region';

/** The edges of many rings, kept in level bands so that those beside a place are found without looking at all. */
export interface Bands {
    /** x0, y0, x1, y1 of each edge. */
    readonly edges: Float64Array;
    /** The ring of each edge. */
    readonly owner: Uint32Array;
    /** Indices of all edges that reach the height y, and of some more. */
    edgesAt(y: number): Uint32Array;
    /** The same for all heights from y0 to y1; an edge may come up more than once. */
    edgesBetween(y0: number, y1: number): Uint32Array;
}

export function bandsOf(rings: readonly Ring[]): Bands {
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
    const edgesBetween = (y0: number, y1: number): Uint32Array => items.subarray(starts[bandOf(y0)]!, starts[bandOf(y1) + 1]!);
    return { edges, owner, edgesBetween, edgesAt: (y) => edgesBetween(y, y) };
}
