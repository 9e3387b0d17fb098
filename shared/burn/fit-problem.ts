import type { LawNumbers } from './dose';
import type { DepthLaw, LawNote } from './law';
import type { Fit } from './least-squares';
import type { BurnRow } from './rows';

export type Name = 'threshold' | 'energy' | 'fade' | 'bend';
/** Those of which a law keeps the covariance. */
export const lawOrder: readonly Name[] = ['threshold', 'energy', 'fade'];

/** Rows to be fitted, the dose of each, and what is thought of the law without them. */
export interface Problem {
    readonly rows: readonly BurnRow[];
    readonly doses: readonly number[];
    readonly guess: DepthLaw;
}

/** Numbers found for the law, and how. */
export interface Numbers {
    readonly numbers: LawNumbers;
    readonly free: readonly Name[];
    readonly fit: Fit;
    /** Indices of the rows that were fitted: those that dug, and those that should have. */
    readonly active: readonly number[];
    /** Assumed standard error of each row (mm). */
    readonly sigmas: readonly number[];
    readonly notes: readonly LawNote[];
    /** False where the solver, or the rounds in which the rows' errors follow from the fit, ran out before coming to rest. */
    readonly converged: boolean;
}

/** Error of reading a depth (mm) where the row says none: a pocket gauge on burnt wood. @commonPractice */
const MEASURING = 0.02;
/** Error of reading a row's depth, beside what goes with the depth itself. */
export function readingOf(row: BurnRow): number {
    return row.tolerance > 0 ? Math.max(row.tolerance, 1e-3) : MEASURING;
}
