/** A square that was judged by its tone: dose of all its passes together (J/mm2), tone 0 to 1, half width of the judgement, pitch (mm) of its lines. */
export interface ToneRow {
    readonly dose: number;
    readonly tone: number;
    readonly tolerance: number;
    readonly pitch?: number;
}

/**
 * One way in which tone may rise with dose F, from nothing at the onset to a ceiling, with x = (F − onset)·rate:
 * ceiling·(1 − (1 − x/bend)^bend) up to x = bend. A bend of 1 is a straight line that stops at the ceiling, 2 a parabola that is
 * level there, and infinity ceiling·(1 − exp(−x)), which never quite reaches it (own choice of a family).
 */
export interface ToneCurve {
    readonly bend: number;
    /** How likely it is among the ways that were tried; they add up to 1. */
    readonly weight: number;
    /** J/mm2. */
    readonly onset: number;
    /** Rise at the onset as a part of the ceiling, mm2/J. */
    readonly rate: number;
    /** Darkest tone that it comes to, 0 to 1. */
    readonly ceiling: number;
    /** Covariance of onset, rate and ceiling, row by row, for an error of one unit. */
    readonly covariance: readonly number[];
}

/**
 * The tone that a dose gives without digging: the mean of a few curves that rise to a ceiling, up to the last square; beyond it nothing is known.
 */
export interface ToneLaw {
    readonly curves: readonly ToneCurve[];
    /** Residual variance in units of the assumed error of a judgement, squared. */
    readonly variance: number;
    /** Rows less fitted numbers. */
    readonly degreesOfFreedom: number;
    /** Doses (J/mm2) between which tone rises by the squares: from nothing to the last one that is not paler again. */
    readonly rises: { readonly to: number; readonly tone: number };
    /** Squares beyond, that came out paler again, by dose. */
    readonly paler: readonly ToneRow[];
    /** Pitch (mm) at which the squares were judged, where it is the same in all. */
    readonly pitch?: number;
    readonly rows: readonly ToneRow[];
}
