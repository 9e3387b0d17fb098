import { EdgeIndex } from '../geometry/edge-index';
import type { Region } from '../geometry/region';
import { orderRings, usableRings } from './order';
import { type Path, pathOfRing } from './path';
import type { BlankPoint } from './place';

export interface CutOptions {
    /** Bridges left in each ring, so that it stays in the board. */
    readonly tabs?: number;
    /** Width of a bridge along the cut (mm, default 1). */
    readonly tabWidth?: number;
    /** Length of a lead-in from the waste (mm, default 0: none), so that the first burn is not on the edge. */
    readonly leadIn?: number;
}

/**
 * The paths that cut a region out: inside before outside, each ring once round from a lead-in on its
 * waste side, with the beam off over the tabs. A lead-in is shortened, and at last left out, where it
 * would run into another edge; tabs are fewer where a ring is short.
 */
export function cutPaths(region: Region, options: CutOptions = {}, from?: BlankPoint): Path[] {
    const leadIn = within(options.leadIn ?? 0, 0, 100);
    const edges = leadIn > 0 ? new EdgeIndex(usableRings(region)) : undefined;
    return orderRings(region, from, (ring, start) => {
        const path = withTabs(
            pathOfRing(ring, start),
            within(options.tabs ?? 0, 0, 1000),
            within(options.tabWidth ?? 1, 0.01, 100),
        );
        return edges === undefined ? path : withLeadIn(path, leadIn, edges);
    });
}

function within(value: number, low: number, high: number): number {
    return Number.isFinite(value) ? Math.min(Math.max(value, low), high) : low;
}

/** Splits a closed path so that evenly spaced stretches of it are dark. */
function withTabs(path: Path, wanted: number, width: number): Path {
    const { points } = path;
    const ends = cumulativeLengths(points);
    const total = ends[ends.length - 1]!;
    // A ring keeps at least three parts in four of its length.
    const tabs = Math.min(Math.floor(wanted), Math.floor(total / (4 * width)));
    if (tabs < 1) return path;
    const cuts: number[] = [];
    for (let k = 0; k < tabs; k++) {
        const middle = ((k + 0.5) / tabs) * total;
        cuts.push(middle - width / 2, middle + width / 2);
    }
    const out: number[] = [points[0]!, points[1]!];
    const lit: number[] = [];
    let next = 0;
    for (let i = 0; i + 3 < points.length; i += 2) {
        const from = ends[i / 2]!;
        const to = ends[i / 2 + 1]!;
        for (; next < cuts.length && cuts[next]! < to; next++) {
            const part = (cuts[next]! - from) / (to - from);
            out.push(
                points[i]! + part * (points[i + 2]! - points[i]!),
                points[i + 1]! + part * (points[i + 3]! - points[i + 1]!),
            );
            lit.push(next % 2 === 0 ? 1 : 0);
        }
        out.push(points[i + 2]!, points[i + 3]!);
        lit.push(next % 2 === 0 ? 1 : 0);
    }
    return { points: Float64Array.from(out), lit: Uint8Array.from(lit) };
}

function cumulativeLengths(points: Float64Array): Float64Array {
    const ends = new Float64Array(points.length / 2);
    for (let i = 1; i < ends.length; i++) {
        ends[i] = ends[i - 1]! + Math.hypot(points[2 * i]! - points[2 * i - 2]!, points[2 * i + 1]! - points[2 * i - 1]!);
    }
    return ends;
}

/**
 * Puts a straight lead-in before the path, from its right: regions keep their inside to the left, so that is
 * the waste. It comes in from behind, three quarters of the way round the corner of waste at the start.
 */
function withLeadIn(path: Path, length: number, edges: EdgeIndex): Path {
    const { points } = path;
    const [x, y] = [points[0]!, points[1]!];
    const leaving = Math.atan2(points[3]! - y, points[2]! - x);
    const backwards = Math.atan2(points.at(-3)! - y, points.at(-4)! - x);
    const corner = (leaving - backwards + 4 * Math.PI) % (2 * Math.PI);
    const angle = leaving - 0.75 * Math.min(corner, Math.PI);
    for (let reach = length; reach >= length / 8; reach /= 2) {
        const fromX = x + reach * Math.cos(angle);
        const fromY = y + reach * Math.sin(angle);
        if (meets(edges, fromX, fromY, x, y)) continue;
        const longer = new Float64Array(points.length + 2);
        longer.set([fromX, fromY]);
        longer.set(points, 2);
        return { points: longer, ...(path.lit && { lit: Uint8Array.from([1, ...path.lit]) }) };
    }
    return path;
}

/** Whether the way from a to b meets an edge other than at b itself. */
function meets(index: EdgeIndex, ax: number, ay: number, bx: number, by: number): boolean {
    const ex = bx + (ax - bx) * 1e-6;
    const ey = by + (ay - by) * 1e-6;
    let met = false;
    index.edgesNear(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by), (edge) => {
        const [cx, cy, dx, dy] = index.points.subarray(2 * edge, 2 * edge + 4) as unknown as [number, number, number, number];
        const apart = side(ax, ay, ex, ey, cx, cy) > 0 !== side(ax, ay, ex, ey, dx, dy) > 0;
        met ||= apart && side(cx, cy, dx, dy, ax, ay) > 0 !== side(cx, cy, dx, dy, ex, ey) > 0;
    });
    return met;
}

/** Positive if r lies to the left of the way from p to q, as seen with y upwards. */
function side(px: number, py: number, qx: number, qy: number, rx: number, ry: number): number {
    return (qx - px) * (ry - py) - (qy - py) * (rx - px);
}
