import { bracket } from '../quantity/bracket';

/**
 * How a turned-over veneer half goes into a pocket whose walls lean, along a straight edge.
 *
 * The veneer is burnt from its show face under the laser, so what stays is narrow there; turned
 * over, that narrow face goes down, into a pocket that is narrower at its floor. Pushed in by h, the
 * gap along an edge is, at depth z below the face,
 *
 *   gap(z) = c - veneer(h - z) - pocket(z),  0 <= z <= h,
 *
 * for the clearance c between the veneer's narrow face and the pocket's mouth, and walls that lie
 * pocket(z) inside of the mouth and veneer(a) outside of the narrow face, each at its depth. It
 * jams where the gap reaches zero. All gaps are those along one edge. Own derivation; checked
 * against two trapezia and against the press of the whole surfaces in tests/bench.
 */
export interface PressFit {
    /** How far the piece goes in, mm. */
    readonly insertion: number;
    readonly bottoms: boolean;
    /** The seam along each edge once it is pressed in and the face is sanded, mm. */
    readonly seam: number;
    /** How much narrower than the clearance that seam is once the piece lies on the floor, mm; negative if wider. */
    readonly closing: number;
    /** The least clearance with which it would reach the floor, mm; infinite where none would do. */
    readonly leastClearance: number;
}

/** How far a wall has moved from its rim at a depth below the face that it was burnt from; mm, never falling. */
export type WallShape = (depth: number) => number;

export interface Walls {
    readonly pocket: WallShape;
    readonly veneer: WallShape;
}

/** What goes into a pocket, mm. */
export interface PressedIn {
    /** How far the piece has to go in to bottom out: depth - glue film. */
    readonly seat: number;
    /** Of the veneer; below its back there is no wall. */
    readonly thickness?: number;
    /** How far the face comes down afterwards: the seam is seen at that level. */
    readonly sanded?: number;
}

/** @param clearance c along each edge, from both halves together, mm (>= 0) */
export function pressFit(
    clearance: number,
    { seat, thickness = Number.POSITIVE_INFINITY, sanded = 0 }: PressedIn,
    { pocket, veneer }: Walls,
): PressFit {
    const depth = Math.max(0, seat);
    const space = Math.max(0, clearance);
    const closing = (way: number) => (z: number) => pocket(z) + veneer(Math.min(way - z, thickness));
    const needed = greatest(closing(depth), depth);
    const bottoms = space >= needed;
    // One place that jams will do: how much more others would need is not asked.
    const goesIn = (way: number): boolean => greatest(closing(way), way, space) <= space;
    const insertion = bottoms ? depth : bracket(0, depth, goesIn, 1e-7).last;
    const closedBy = (way: number): number => {
        const seen = Math.min(Math.max(0, sanded), way);
        return pocket(seen) + veneer(Math.min(way - seen, thickness));
    };
    return {
        insertion,
        bottoms,
        seam: Math.max(0, space - closedBy(insertion)),
        closing: closedBy(depth),
        leastClearance: Math.max(0, needed),
    };
}

const places = 32;

/** The greatest value from 0 to `end`, both ends included: looked for around the best of some places. Past `enough`, anything above that. */
function greatest(value: (at: number) => number, end: number, enough = Number.POSITIVE_INFINITY): number {
    if (!(end > 0)) return value(0);
    let best = 0;
    let most = Number.NEGATIVE_INFINITY;
    const ask = (at: number): void => {
        if (most > enough) return;
        const here = value(at);
        if (!(here > most)) return;
        most = here;
        best = at;
    };
    for (let i = 0; i <= places; i++) ask((end * i) / places);
    for (let step = end / places / 2; step > 1e-4 * end; step /= 2) {
        const middle = best;
        ask(Math.max(0, middle - step));
        ask(Math.min(end, middle + step));
    }
    return most;
}
