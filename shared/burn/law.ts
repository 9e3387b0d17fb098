import { depthOf, doseOf, type LawNumbers, passesWorth, type Settings, signedDepth } from './dose';
import type { BurnRow } from './rows';
import { coverageFactor } from './student';

/** What a maker should know of how a depth law came about. */
export type LawNote =
    | 'no-coupon' // nothing was measured: the law is a guess from density
    | 'no-density' // the guess had no density either
    | 'combined' // too few rows to stand alone: they are weighed against the guess
    | 'few-rows' // it stands alone, with fewer than three degrees of freedom
    | 'one-dose' // all rows have one dose, so threshold and energy cannot be told apart
    | 'no-depth' // no row took anything off
    | 'falls-with-dose' // rows with more dose came out shallower; they were weighed against the guess
    | 'threshold-at-zero' // the best threshold would be below zero, so it was held at zero
    | 'fade-held' // the best fade lay outside what is credible, so it was held at the limit
    | 'fade-assumed' // passes vary, but too little to tell a fade: later passes count as the first
    | 'rows-left-out' // some rows had no usable figures
    | 'outliers'; // some rows do not fit the others

export interface LawRow extends BurnRow {
    readonly dose: number;
    readonly fitted: number;
    /** Measured less fitted depth (mm). */
    readonly residual: number;
    /** Residual over its own standard error, that error estimated without the row; absent where it cannot be told. */
    readonly studentised?: number;
    readonly outlier: boolean;
}

/** A fitted or guessed depth law with everything that is needed to predict from it. Plain data. */
export interface DepthLaw extends LawNumbers {
    /** Standard errors of the three numbers; 0 where a number was held. */
    readonly errors: LawNumbers;
    /** Covariance of (threshold, energy, fade), row by row. */
    readonly covariance: readonly number[];
    /** Residual variance in units of the assumed measuring error squared; 1 where that error is taken as it is. */
    readonly variance: number;
    /** Measuring error of a depth (mm) that predictions are made for, beside five per cent of the depth. */
    readonly measuring: number;
    /** Degrees of freedom of the variance; absent where it is assumed. */
    readonly freedom?: number;
    /** Part of the (weighted) variation of the measured depths that the law explains. */
    readonly explained?: number;
    /** The same with each row predicted by the others: what is left of it on wood not yet burnt. */
    readonly foretold?: number;
    /** Lowest and highest dose of a row (J/mm2). */
    readonly range?: { readonly low: number; readonly high: number };
    readonly rows: readonly LawRow[];
    readonly guess: boolean;
    readonly notes: readonly LawNote[];
}

/** A depth (mm) with the interval in which a measured square would lie. */
export interface Prediction {
    readonly value: number;
    readonly low: number;
    readonly high: number;
}

/** Standard error of measuring one square, up to the fitted variance: a gauge's floor beside five per cent of the depth. */
export function measuringError(depth: number, floor: number): number {
    return Math.hypot(floor, 0.05 * depth);
}

/** Slopes of the signed depth along threshold, energy and fade. */
export function depthSlopes(law: LawNumbers, dose: number, passes: number): [number, number, number] {
    const worth = passesWorth(law.fade, passes);
    const over = (dose - law.threshold) / law.energy;
    return [-worth / law.energy, (-over * worth) / law.energy, over * fadeSlope(law.fade, passes)];
}

function fadeSlope(fade: number, passes: number): number {
    let slope = 0;
    for (let pass = 1; pass < Math.min(passes, 1000); pass++) slope += pass * fade ** (pass - 1);
    return slope;
}

/**
 * Depth that settings give, with the prediction interval for one new square at the given coverage.
 * Student's t on the fitted spread; where the spread is assumed (a guess, or rows weighed against one)
 * the interval is a ratio, as deep again above as below, since the energy is uncertain by a factor.
 * Undefined for settings that are no settings (zero, negative, not finite).
 */
export function predict(law: DepthLaw, settings: Settings, coverage = 0.95): Prediction | undefined {
    const dose = doseOf(settings);
    if (!(dose >= 0) || !Number.isFinite(dose) || !(settings.passes >= 1) || !Number.isFinite(settings.passes)) return undefined;
    return predictDose(law, dose, settings.passes, coverage);
}

/** As predict, for a dose (J/mm2) of each pass. */
export function predictDose(law: DepthLaw, dose: number, passes: number, coverage = 0.95): Prediction | undefined {
    const signed = signedDepth(law, dose, passes);
    const value = depthOf(law, dose, passes);
    const slopes = depthSlopes(law, dose, passes);
    let variance = law.variance * measuringError(value, law.measuring) ** 2;
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += slopes[i]! * slopes[j]! * law.covariance[3 * i + j]!;
    const half = coverageFactor(coverage, law.freedom) * Math.sqrt(Math.max(0, variance));
    if (!Number.isFinite(value) || !Number.isFinite(half)) return undefined;
    const low = law.freedom === undefined && value > 0 ? value ** 2 / (value + half) : signed - half;
    return { value, low: Math.max(0, low), high: Math.max(0, signed + half) };
}
