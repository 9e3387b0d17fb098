import type { EdgeIndex } from './edge-index';

/** Which rings touch or cross, each other or themselves. */
export interface Contacts {
    /** For each ring, the least number among all rings that hang together with it. */
    readonly group: Int32Array;
    /** For each group, by that number, whether anything in it touches or crosses. */
    readonly touching: Uint8Array;
}

/** Pairs of edges looked at before giving up, for each edge: tangles are the polygon library's work. */
const patience = 64;

/**
 * Finds what hangs together. Exact for whole numbers up to 9e7, since then every product is. Gives
 * up on a tangle, with undefined, rather than compare all edges with all.
 */
export function contactsOf(index: EdgeIndex): Contacts | undefined {
    const rings = index.firstEdge.length - 1;
    const group = Int32Array.from({ length: rings }, (_, ring) => ring);
    const touching = new Uint8Array(rings);
    let left = patience * index.points.length;
    for (let a = 0; a < index.runs && left > 0; a++) {
        const box = 4 * a;
        const { runBox } = index;
        index.runsNear(runBox[box]!, runBox[box + 1]!, runBox[box + 2]!, runBox[box + 3]!, (b) => {
            // Looking at none of its edges takes time too, where all runs lie on one heap.
            left -= passed;
            if (b < a || left <= 0) return;
            const one = find(group, index.runRing[a]!);
            const other = find(group, index.runRing[b]!);
            // Once it is known that two belong to the library together, nothing more is to be learnt from them.
            if (one === other && touching[one] === 1) return;
            left -= lookedAt;
            if (!runsTouch(index, a, b)) return;
            const least = Math.min(one, other);
            group[one] = least;
            group[other] = least;
            touching[least] = 1;
        });
    }
    if (left <= 0) return undefined;
    for (let ring = 0; ring < rings; ring++) group[ring] = find(group, ring);
    return { group, touching };
}

/** Edges of a pair of runs that are usually compared: most are outside the part that the boxes share. */
const lookedAt = 16;
/** What passing a pair by counts for. */
const passed = 4;

/** The group of a ring; shortens the way for the next time. */
function find(group: Int32Array, ring: number): number {
    let at = ring;
    while (group[at]! !== at) {
        group[at] = group[group[at]!]!;
        at = group[at]!;
    }
    return at;
}

/** How many other edges the edges of a run meet; stops at `enough`. */
export function crossingsOfRun(index: EdgeIndex, run: number, enough: number): number {
    const { runBox } = index;
    const box = 4 * run;
    let found = 0;
    index.runsNear(runBox[box]!, runBox[box + 1]!, runBox[box + 2]!, runBox[box + 3]!, (other) => {
        if (found < enough) found += meetings(index, run, other, false);
    });
    return found;
}

/** Whether any edge of one run meets any of another, other than where neighbours are joined. */
function runsTouch(index: EdgeIndex, a: number, b: number): boolean {
    return meetings(index, a, b, true) > 0;
}

function meetings(index: EdgeIndex, a: number, b: number, onlyOne: boolean): number {
    const { points, runStart, runEnd, runBox } = index;
    // Only edges in the part that both boxes share can meet.
    const minX = Math.max(runBox[4 * a]!, runBox[4 * b]!);
    const minY = Math.max(runBox[4 * a + 1]!, runBox[4 * b + 1]!);
    const maxX = Math.min(runBox[4 * a + 2]!, runBox[4 * b + 2]!);
    const maxY = Math.min(runBox[4 * a + 3]!, runBox[4 * b + 3]!);
    let found = 0;
    for (let e = runStart[a]!; e < runEnd[a]!; e++) {
        if (outside(points, e, minX, minY, maxX, maxY)) continue;
        for (let f = a === b ? e + 1 : runStart[b]!; f < runEnd[b]!; f++) {
            if (outside(points, f, minX, minY, maxX, maxY)) continue;
            if (!edgesTouch(points, e, f) || joined(index, index.runRing[a]!, index.runRing[b]!, e, f)) continue;
            found++;
            if (onlyOne) return found;
        }
    }
    return found;
}

function outside(points: Float64Array, edge: number, minX: number, minY: number, maxX: number, maxY: number): boolean {
    const ax = points[2 * edge]!;
    const ay = points[2 * edge + 1]!;
    const bx = points[2 * edge + 2]!;
    const by = points[2 * edge + 3]!;
    return (ax < minX && bx < minX) || (ax > maxX && bx > maxX) || (ay < minY && by < minY) || (ay > maxY && by > maxY);
}

function joined(index: EdgeIndex, ringA: number, ringB: number, e: number, f: number): boolean {
    if (ringA !== ringB) return false;
    const first = index.firstEdge[ringA]!;
    const last = index.firstEdge[ringA + 1]! - 2;
    const gap = Math.abs(e - f);
    return gap === 1 || gap === last - first;
}

/** Whether two edges have a point in common. */
function edgesTouch(points: Float64Array, e: number, f: number): boolean {
    const ax = points[2 * e]!;
    const ay = points[2 * e + 1]!;
    const bx = points[2 * e + 2]!;
    const by = points[2 * e + 3]!;
    const cx = points[2 * f]!;
    const cy = points[2 * f + 1]!;
    const dx = points[2 * f + 2]!;
    const dy = points[2 * f + 3]!;
    if (areApart(ax, bx, cx, dx) || areApart(ay, by, cy, dy)) return false;
    const a = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
    const b = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
    if (haveSameSign(a, b)) return false;
    const c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const d = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
    return !haveSameSign(c, d);
}

/** Whether the interval between a and b lies wholly beside that between c and d. */
function areApart(a: number, b: number, c: number, d: number): boolean {
    return (a < c && a < d && b < c && b < d) || (a > c && a > d && b > c && b > d);
}

function haveSameSign(a: number, b: number): boolean {
    return (a > 0 && b > 0) || (a < 0 && b < 0);
}
