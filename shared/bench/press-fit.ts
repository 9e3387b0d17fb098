/**
 * How a turned-over veneer half goes into a pocket whose walls lean.
 *
 * Both halves taper: the narrow face of the veneer piece goes down, the pocket is narrower at its
 * floor by the same lean, so the gap is the same at every level and shrinks as the piece goes in:
 * gap(h) = c - h * tan(taper), for the total side clearance c at the mouth and the insertion h.
 * Own derivation; checked against the geometry of two trapezia in tests/bench.
 */
export interface PressFit {
    /** How far the piece goes in, mm. */
    readonly insertion: number;
    readonly bottoms: boolean;
    /** The seam that is seen once the face is sanded, mm across the whole joint (both sides). */
    readonly seam: number;
    /** The least total clearance with which it would reach the floor, mm. */
    readonly leastClearance: number;
}

/**
 * @param clearance total clearance c between piece and pocket at the mouth, mm (>= 0)
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
