import { EdgeIndex } from './edge-index';
import { toGrid, unitsPerMillimetre } from './grid';
import { area, boundsOfRings } from './measure';
import type { Region } from './region';

/** A region made ready to be cut against others: its edges in whole units. */
export interface Outlined {
    readonly index: EdgeIndex;
    /** With its corners on the grid, mm2. */
    readonly area: number;
}

/** Units up to which a place has a number of its own, and products of two differences are exact. */
const reach = 2 ** 25;

/** Undefined where it is empty, or so large that products of coordinates would not be exact. */
export function outlined(region: Region): Outlined | undefined {
    const rings = region.rings.map(toGrid).filter((ring) => ring !== undefined);
    const box = boundsOfRings(rings);
    if (box === undefined || Math.max(-box.minX, -box.minY, box.maxX, box.maxY) >= reach) return undefined;
    return { index: new EdgeIndex(rings), area: area({ rings }) / unitsPerMillimetre ** 2 };
}

/** Where an outline meets the other one. */
export interface Node {
    /** The same for both outlines; a corner that several rings share is one place. */
    readonly id: number;
    readonly ring: number;
    readonly edge: number;
    /** Part of the edge, 0 to below 1; 0 at a corner. */
    readonly along: number;
    /** Whole units. */
    readonly x: number;
    readonly y: number;
    /** Where the outlines cross plainly: whether this one comes into the other region. */
    readonly enters?: boolean;
}

/** All meetings of two outlines, in order along each. */
export interface Meetings {
    readonly onA: readonly Node[];
    readonly onB: readonly Node[];
    /** Area that laying crossings on the grid can move, mm2. */
    readonly slack: number;
}

/** Edges looked at for each edge before it is left to a sweep. */
const patience = 64;
/** What a pair of runs counts for. */
const runPair = 16;

/** Finds where outlines cross or touch. Exact; undefined where they meet too often. */
export function outlineMeetings(a: EdgeIndex, b: EdgeIndex): Meetings | undefined {
    const found = new Found(a, b);
    let left = patience * (a.points.length + b.points.length);
    for (let run = 0; run < a.runs && left > 0; run++) {
        const box = 4 * run;
        b.runsNear(a.runBox[box]!, a.runBox[box + 1]!, a.runBox[box + 2]!, a.runBox[box + 3]!, (other) => {
            left -= runPair;
            if (left > 0) found.look(run, other);
        });
    }
    return left > 0 ? found.meetings() : undefined;
}

/** An edge of each outline. */
interface Pair {
    readonly ringA: number;
    readonly ringB: number;
    readonly e: number;
    readonly f: number;
}

class Found {
    private readonly onA: Node[] = [];
    private readonly onB: Node[] = [];
    private readonly corners = new Map<number, number>();
    private ids = 0;
    /** Of edges that cross, units. */
    private length = 0;

    constructor(
        private readonly a: EdgeIndex,
        private readonly b: EdgeIndex,
    ) {}

    /** Compares the edges of two runs. */
    look(run: number, other: number): void {
        const { a, b } = this;
        const p = a.points;
        const box = 4 * other;
        const minX = b.runBox[box]!;
        const minY = b.runBox[box + 1]!;
        const maxX = b.runBox[box + 2]!;
        const maxY = b.runBox[box + 3]!;
        for (let e = a.runStart[run]!; e < a.runEnd[run]!; e++) {
            const ax = p[2 * e]!;
            const ay = p[2 * e + 1]!;
            const bx = p[2 * e + 2]!;
            const by = p[2 * e + 3]!;
            if (beside(ax, bx, minX, maxX) || beside(ay, by, minY, maxY)) continue;
            for (let f = b.runStart[other]!; f < b.runEnd[other]!; f++) this.compare(run, e, other, f, ax, ay, bx, by);
        }
    }

    private compare(run: number, e: number, other: number, f: number, ax: number, ay: number, bx: number, by: number): void {
        const q = this.b.points;
        const cx = q[2 * f]!;
        const cy = q[2 * f + 1]!;
        const dx = q[2 * f + 2]!;
        const dy = q[2 * f + 3]!;
        if (apart(ax, bx, cx, dx) || apart(ay, by, cy, dy)) return;
        const from = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
        const to = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
        if (areOnOneSide(from, to)) return;
        const start = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
        const end = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
        if (areOnOneSide(start, end)) return;
        const on = { ringA: this.a.runRing[run]!, ringB: this.b.runRing[other]!, e, f };
        if (from === 0 || to === 0 || start === 0 || end === 0) {
            if (from === 0) this.touch(on, ax, ay, cx, cy, dx, dy);
            if (to === 0) this.touch(on, bx, by, cx, cy, dx, dy);
            if (start === 0) this.touch(on, cx, cy, ax, ay, bx, by);
            if (end === 0) this.touch(on, dx, dy, ax, ay, bx, by);
            return;
        }
        const along = from / (from - to);
        const x = Math.round(ax + along * (bx - ax));
        const y = Math.round(ay + along * (by - ay));
        const id = this.ids++;
        this.onA.push({ id, ring: on.ringA, edge: e, along, x, y, enters: to > 0 });
        this.onB.push({ id, ring: on.ringB, edge: f, along: start / (start - end), x, y, enters: to < 0 });
        this.length += Math.abs(bx - ax) + Math.abs(by - ay) + Math.abs(dx - cx) + Math.abs(dy - cy);
    }

    /** Notes a corner that lies on the line through (px, py) and (qx, qy), if it lies between them. */
    private touch({ ringA, ringB, e, f }: Pair, x: number, y: number, px: number, py: number, qx: number, qy: number): void {
        if (!between(x, px, qx) || !between(y, py, qy)) return;
        const id = this.cornerAt(x, y);
        this.onA.push(placed(this.a, ringA, e, id, x, y));
        this.onB.push(placed(this.b, ringB, f, id, x, y));
    }

    private cornerAt(x: number, y: number): number {
        const key = (x + reach) * 2 * reach + (y + reach);
        const known = this.corners.get(key);
        if (known !== undefined) return known;
        const id = this.ids++;
        this.corners.set(key, id);
        return id;
    }

    meetings(): Meetings {
        const slack = 1e-6 + this.length / unitsPerMillimetre ** 2;
        return { onA: inOrder(this.onA), onB: inOrder(this.onB), slack };
    }
}

function placed({ points, firstEdge }: EdgeIndex, ring: number, edge: number, id: number, x: number, y: number): Node {
    const ax = points[2 * edge]!;
    const ay = points[2 * edge + 1]!;
    const bx = points[2 * edge + 2]!;
    const by = points[2 * edge + 3]!;
    if (x === bx && y === by) {
        const next = edge + 1 < firstEdge[ring + 1]! - 1 ? edge + 1 : firstEdge[ring]!;
        return { id, ring, edge: next, along: 0, x, y };
    }
    const along = Math.abs(bx - ax) > Math.abs(by - ay) ? (x - ax) / (bx - ax) : (y - ay) / (by - ay);
    return { id, ring, edge, along, x, y };
}

/** Along the outline; a corner that was come upon from both of its edges once. */
function inOrder(nodes: readonly Node[]): Node[] {
    const sorted = nodes.toSorted((one, other) => one.edge - other.edge || one.along - other.along);
    return sorted.filter((node, i) => {
        const last = sorted[i - 1];
        return last === undefined || last.id !== node.id || last.edge !== node.edge;
    });
}

const beside = (a: number, b: number, least: number, most: number): boolean => (a < least && b < least) || (a > most && b > most);
const apart = (a: number, b: number, c: number, d: number): boolean => beside(a, b, Math.min(c, d), Math.max(c, d));
const areOnOneSide = (a: number, b: number): boolean => (a > 0 && b > 0) || (a < 0 && b < 0);
const between = (a: number, c: number, d: number): boolean => (a >= c && a <= d) || (a <= c && a >= d);
