import { crossingsOfRun } from './contacts';
import { EdgeIndex } from './edge-index';
import { boundsOfRings } from './measure';

/** Fewer points than this are never a burden. */
const light = 2000;

/** Crossings that a polygon library works out in a few seconds. */
const mostCrossings = 2_000_000;

/** The same for pairs of a corner and an edge beside it, all of which its sweep looks at. */
const mostPairs = 1e9;

const sampledRuns = 256;
const bands = 512;

/** How a polygon library had best go about rings in whole units, or that it had better not. */
export type Approach = 'sweep down' | 'sweep across' | 'refuse';

/**
 * Judges beforehand what cannot be stopped once it runs. The libraries sweep downwards over the
 * plane and, at every corner, look at all edges beside it; so art with many edges side by side is
 * laid on its side first, and what is too tangled either way, or crosses itself too often, refused.
 */
export function approachTo(rings: readonly Float64Array[]): Approach {
    let points = 0;
    for (const ring of rings) points += ring.length / 2;
    if (points < light) return 'sweep down';
    const down = pairs(rings, 1);
    const across = down > points * 64 ? pairs(rings, 0) : down;
    const fewest = Math.min(down, across);
    // Edges that cross lie beside each other, so at a corner of one the other is counted; a corner ends two edges.
    const mayTangle = 2 * fewest > mostCrossings;
    if (fewest > mostPairs || (mayTangle && crossings(rings) > mostCrossings)) return 'refuse';
    return across < down / 2 ? 'sweep across' : 'sweep down';
}

/** Corners times the edges beside them along an axis (0 for x, 1 for y), by bands. */
function pairs(rings: readonly Float64Array[], axis: 0 | 1): number {
    const { minX, minY, maxX, maxY } = boundsOfRings(rings)!;
    const start = axis === 0 ? minX : minY;
    const scale = (bands - 1) / Math.max(1, axis === 0 ? maxX - minX : maxY - minY);
    const corners = new Float64Array(bands);
    const begins = new Float64Array(bands + 1);
    for (const ring of rings) {
        let before = Math.floor((ring[ring.length - 2 + axis]! - start) * scale);
        for (let i = axis; i < ring.length; i += 2) {
            const here = Math.floor((ring[i]! - start) * scale);
            corners[here]!++;
            begins[Math.min(before, here)]!++;
            begins[Math.max(before, here) + 1]!--;
            before = here;
        }
    }
    let beside = 0;
    let sum = 0;
    for (let band = 0; band < bands; band++) {
        beside += begins[band]!;
        sum += corners[band]! * beside;
    }
    return sum;
}

/** An estimate from some of the edges, evenly chosen. */
function crossings(rings: readonly Float64Array[]): number {
    const index = new EdgeIndex(rings);
    const stride = Math.max(1, Math.floor(index.runs / sampledRuns));
    let found = 0;
    let sampled = 0;
    for (let run = 0; run < index.runs; run += stride) {
        sampled++;
        found += crossingsOfRun(index, run, (4 * mostCrossings * sampledRuns) / index.runs);
        // A clear case needs no more looking.
        if (sampled >= sampledRuns / 16 && (found * index.runs) / sampled > 8 * mostCrossings) break;
    }
    // Each crossing is met from both of its edges.
    return (found * index.runs) / sampled / 2;
}
