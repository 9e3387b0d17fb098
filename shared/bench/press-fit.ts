/**
 * How a turned-over veneer half goes into a pocket whose walls lean.
 *
 * The veneer is burnt from its show face under the laser, so what stays is narrow there; turned
 * over, that narrow face goes down, into a pocket that is narrower at its floor. Pushed in by h, the
 * gap along an edge is, at depth z below the face,
 *
 *   gap(z) = c - h * tan(veneer) + z * (tan(veneer) - tan(pocket)),  0 <= z <= h,
 *
 * for the clearance c between the veneer's narrow face and the pocket's mouth. With equal leans it
 * is the same at every level, c - h * tan(lean). It jams where it reaches zero. All gaps are those
 * along one edge. Own derivation; checked against two trapezia in tests/bench.
 */
export interface PressFit {
    /** How far the piece goes in, mm. */
    readonly insertion: number;
    readonly bottoms: boolean;
    /** The seam along each edge once it is pressed in and the face is sanded, mm. */
    readonly seam: number;
    /** How much narrower than the clearance that seam is once the piece lies on the floor, mm; negative if wider. */
    readonly closing: number;
    /** The least clearance with which it would reach the floor, mm. */
    readonly leastClearance: number;
}

/** Lean of the walls of both halves against the upright, rad, in [0, pi/2). */
export interface Leans {
    readonly pocket: number;
    readonly veneer: number;
}

/**
 * @param clearance c along each edge, from both halves together, mm (>= 0)
 * @param seat how far the piece has to go in to bottom out: depth - glue film, mm
 * @param sanded how far the face comes down afterwards, mm: the seam is seen at that level
 */
export function pressFit(clearance: number, seat: number, leans: Leans, sanded = 0): PressFit {
    const veneer = Math.tan(leans.veneer);
    const pocket = Math.tan(leans.pocket);
    // The tightest level is the floor if the pocket leans more, else the mouth.
    const tightest = Math.max(veneer, pocket);
    const depth = Math.max(0, seat);
    const space = Math.max(0, clearance);
    const needed = depth * tightest;
    const bottoms = space >= needed;
    const insertion = bottoms ? depth : space / tightest;
    const closedBy = (way: number): number => way * veneer - Math.min(Math.max(0, sanded), way) * (veneer - pocket);
    return {
        insertion,
        bottoms,
        seam: Math.max(0, space - closedBy(insertion)),
        closing: closedBy(depth),
        leastClearance: needed,
    };
}
