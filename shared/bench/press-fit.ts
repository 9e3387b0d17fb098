/**
 * How a turned-over veneer half goes into a pocket whose walls lean.
 *
 * Both halves taper: the narrow face of the veneer piece goes down, the pocket is narrower at its
 * floor by the same lean, so the gap is the same at every level and shrinks as the piece goes in:
 * gap(h) = c - h * tan(taper), for the clearance c on each side (what pocket and piece give together,
 * between the pocket's mouth and the piece's narrow face) and the insertion h.
 * Own derivation; checked against the geometry of two trapezia in tests/bench.
 */
export interface PressFit {
    /** How far the piece goes in, mm. */
    readonly insertion: number;
    readonly bottoms: boolean;
    /** The seam that is seen once the face is sanded, mm on each side. */
    readonly seam: number;
    /** The least clearance on each side with which it would reach the floor, mm. */
    readonly leastClearance: number;
}

/**
 * @param clearance c on each side, mm (>= 0)
 * @param seat how far the piece has to go in to bottom out: depth - glue film, mm
 * @param taper angle of a wall against the upright, rad, in [0, pi/2)
 */
export function pressFit(clearance: number, seat: number, taper: number): PressFit {
    const lean = Math.tan(taper);
    const needed = Math.max(0, seat) * lean;
    const bottoms = clearance >= needed;
    const insertion = bottoms ? Math.max(0, seat) : lean > 0 ? Math.max(0, clearance) / lean : 0;
    return { insertion, bottoms, seam: Math.max(0, clearance - insertion * lean), leastClearance: needed };
}
