/** A square that was judged by its tone: dose of all its passes together (J/mm2), tone 0 to 1, half width of the judgement. */
export interface ToneRow {
    readonly dose: number;
    readonly tone: number;
    readonly tolerance: number;
}

/**
 * The tone that a dose gives without digging: none up to an onset, then along a line to the darkest.
 * tone = offset + slope·F, held between 0 and 1 (own model: the line is what a few squares can bear).
 */
export interface ToneLaw {
    readonly offset: number;
    readonly slope: number;
    /** Covariance of offset and slope, row by row, for an error of one unit. */
    readonly covariance: readonly [number, number, number, number];
    /** Residual variance in units of the assumed error of a judgement, squared. */
    readonly variance: number;
    /** Rows less fitted numbers. */
    readonly freedom: number;
    readonly rows: readonly ToneRow[];
}
