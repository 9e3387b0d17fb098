import { crossingsOfRun } from './contacts';
import { EdgeIndex } from './edge-index';
import { boundsOfRings } from './measure';

/** Fewer points than this are never a burden. */
const light = 2000;

/** Crossings that a polygon library works out in a few seconds. */
const mostCrossings = 2_000_000;

/** The same for pairs of a corner and an edge beside it, all of which its sweep looks at. */
const mostPairs = 1e9;

/** The same in art so fine that its edges may all be beside each other: a coast crosses itself seldom, a million points of scribble do not end. */
const mostCrossingsOfFine = 100_000;

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
    const down = beside(rings, 1);
    const across = down.most > points * 64 ? beside(rings, 0) : down;
    // Edges that cross lie beside each other, so at a corner of one the other is counted; a corner ends two edges.
    const most = Math.min(down.most, across.most);
    if (Math.min(down.pairs, across.pairs) > mostPairs) return 'refuse';
    if (2 * most > mostCrossings && crossings(rings) > (most > mostPairs ? mostCrossingsOfFine : mostCrossings)) return 'refuse';
    return across.pairs < down.pairs / 2 ? 'sweep across' : 'sweep down';
}

/**
 * Corners times the edges beside them along an axis (0 for x, 1 for y), by bands: `pairs` with each edge for as much of a band as it
 * runs through, `most` with each for all of it, as if all were beside all corners of their bands.
 */
function beside(rings: readonly Float64Array[], axis: 0 | 1): { pairs: number; most: number } {
    const { minX, minY, maxX, maxY } = boundsOfRings(rings)!;
    const start = axis === 0 ? minX : minY;
    const scale = (bands - 1) / Math.max(1, axis === 0 ? maxX - minX : maxY - minY);
    const corners = new Float64Array(bands);
    const begins = new Float64Array(bands + 1);
    /** What of its first and last band an edge does not run through. */
    const outside = new Float64Array(bands);
    for (const ring of rings) {
        let before = (ring[ring.length - 2 + axis]! - start) * scale;
        for (let i = axis; i < ring.length; i += 2) {
            const here = (ring[i]! - start) * scale;
            const from = Math.min(before, here);
            const to = Math.max(before, here);
            const first = Math.floor(from);
            const last = Math.floor(to);
            corners[Math.floor(here)]!++;
            begins[first]!++;
            begins[last + 1]!--;
            outside[first]! += from - first;
            outside[last]! += 1 - (to - last);
            before = here;
        }
    }
    let running = 0;
    let pairs = 0;
    let most = 0;
    for (let band = 0; band < bands; band++) {
        running += begins[band]!;
        pairs += corners[band]! * Math.max(1, running - outside[band]!);
        most += corners[band]! * running;
    }
    return { pairs, most };
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
