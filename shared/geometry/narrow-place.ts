/** A place that is narrower than a limit, in mm and mm2. */
export interface NarrowPlace {
    /** `whole`: a loose piece (or a hole) narrow all over; `neck`: between wider parts; `tip`: it ends in nothing. */
    readonly kind: 'whole' | 'neck' | 'tip';
    readonly x: number;
    readonly y: number;
    /** Of a neck where it is narrowest; of a whole piece where it is widest; of a tip halfway along. */
    readonly width: number;
    /** Of all that is narrower than the limit around there, to some ten per cent. */
    readonly area: number;
}

/** A point of an outline at which the maximal disc is smaller than the limit; mm throughout. */
export interface MedialSample {
    readonly x: number;
    readonly y: number;
    /** Number of the edge, plus how far along it, 0 to 1. */
    readonly at: number;
    /** Length of outline that it stands for. */
    readonly length: number;
    readonly radius: number;
    readonly middleX: number;
    readonly middleY: number;
    /** What stops the disc on the other side. */
    readonly stopX: number;
    readonly stopY: number;
    readonly stopAt: number;
}
