import type { Interval } from '../quantity/interval';
import { coverageFactor } from './distributions';
import { bent, depthOf, doseOf, type LawNumbers, passesWorth, type Settings, signedDepth } from './dose';
import type { LackOfFit } from './lack-of-fit';
import type { PowerByDay } from './measured-power';
import type { PieceSpread } from './piece-spread';
import type { BurnRow } from './rows';
import type { ToneLaw } from './tone-law';

/** What a maker should know of how a depth law came about. */
export type LawNote =
    | 'no-coupon' // nothing was measured: the law is a guess from density
    | 'no-density' // the guess had no density either
    | 'combined' // too few rows to stand alone: they are weighed against the guess
    | 'few-rows' // it stands alone, with fewer than three degrees of freedom
    | 'doses-alike' // the rows' doses are too much alike to tell threshold and energy apart
    | 'no-depth' // no row took anything off
    | 'falls-with-dose' // rows with more dose came out shallower; they were weighed against the guess
    | 'threshold-at-zero' // the best threshold would be below zero, so it was held at zero
    | 'fade-held' // the best fade lay outside what is credible, so it was held at the limit
    | 'fade-assumed' // passes vary, but too little to tell a fade: later passes count as the first
    | 'not-converged' // the fit of the rows did not come to rest: they were weighed against the guess, or left out
    | 'rows-left-out' // some rows had no usable figures
    | 'bent' // passes take less off the stronger they are: that predicts squares that are left out better
    | 'first-unlike' // later passes take alike, and less than the first: likewise
    | 'off-law' // squares that were repeated agree better with each other than with the law
    | 'outliers'; // some rows do not fit the others

export interface LawRow extends BurnRow {
    readonly dose: number;
    readonly fitted: number;
    /** Measured less fitted depth (mm). */
    readonly residual: number;
    /** Residual over its own standard error, that error estimated without the row; absent where it cannot be told. */
    readonly studentised?: number;
    readonly outlier: boolean;
    /** It has no pull on the law. */
    readonly leftOut?: true;
}

/** A fitted or guessed depth law with everything that is needed to predict from it. Plain data. */
export interface DepthLaw extends LawNumbers {
    /** Standard errors of the three numbers; 0 where a number was held. */
    readonly errors: LawNumbers;
    /** Covariance of (threshold, energy, fade), row by row. */
    readonly covariance: readonly number[];
    /** Standard error of a fade that was not fitted; 0 if it was. */
    readonly fadeAssumed: number;
    /** Residual variance in units of the assumed measuring error squared. */
    readonly variance: number;
    /** Measuring error of a depth (mm) that predictions are made for, beside five per cent of the depth. */
    readonly measuring: number;
    /** Rows less fitted numbers; absent where the law is a guess or weighed against one. */
    readonly degreesOfFreedom?: number;
    /** Tone that a dose gives, where squares were judged by it. */
    readonly tone?: ToneLaw;
    /** Dose (J/mm2) of the darkest tone without digging: as judged; else the threshold, or the guess of it where that came out as zero. */
    readonly darkest: number;
    /** Pitch (mm) of the rows, if it is the same in all. */
    readonly pitch?: number;
    /** R²: part of the (weighted) variation of the measured depths that the law explains. */
    readonly rSquared?: number;
    /** Predicted R² (PRESS): the same with each row predicted by the others, so what is left of it on wood not yet burnt. */
    readonly predictedRSquared?: number;
    /** Of a bent law: standard error of the bend, and how threshold, energy and fade move with it. */
    readonly bending?: { readonly error: number; readonly along: readonly [number, number, number] };
    /** Laws of another form that were tried, with how likely each is by what it says of squares that are left out; none where the straight one was best. */
    readonly rivals?: readonly { readonly numbers: LawNumbers; readonly weight: number }[];
    /** Whether repeated rows go along with the law; absent where none tells. */
    readonly fits?: LackOfFit;
    /** Lowest and highest dose of a row (J/mm2). */
    readonly range?: { readonly low: number; readonly high: number };
    readonly rows: readonly LawRow[];
    /** The power that the law is for, where runs have said what is left of it. */
    readonly power?: PowerByDay;
    /** With it a prediction is for the next piece, else for one more square on the board that was measured. */
    readonly pieces?: PieceSpread;
    readonly guess: boolean;
    readonly notes: readonly LawNote[];
}

/** Standard error of a fade that nobody measured (own estimate). */
export const FADE_SPREAD = 0.05;

/** Standard error of measuring one square, up to the fitted variance: a gauge's floor beside five per cent of the depth. */
export function measuringError(depth: number, floor: number): number {
    return Math.hypot(floor, 0.05 * depth);
}

/** Slopes of the signed depth along threshold, energy and fade. */
export function depthSlopes(law: LawNumbers, dose: number, passes: number): [number, number, number] {
    const worth = passesWorth(law, passes);
    const over = (dose - law.threshold) / law.energy;
    const steep = worth * steepness(law, over);
    return [-steep / law.energy, (-over * steep) / law.energy, bent(law, over) * fadeSlope(law, passes)];
}

/** What is left of the rise of a pass where it is bent. */
function steepness({ bend = 0 }: LawNumbers, over: number): number {
    return over > 0 ? Math.exp(-bend * over) : 1;
}

/** Slope of the depth along the bend (mm2). */
export function bendSlope(law: LawNumbers, dose: number, passes: number): number {
    const over = Math.max(0, (dose - law.threshold) / law.energy);
    const { bend = 0 } = law;
    const x = bend * over;
    // Near a straight line both parts go to nothing: their series to the third order.
    const each = Math.abs(x) < 1e-3 ? over ** 2 * (-0.5 + x / 3) : (over * Math.exp(-x)) / bend + Math.expm1(-x) / bend ** 2;
    return each * passesWorth(law, passes);
}

function fadeSlope({ fade, laterAlike }: LawNumbers, passes: number): number {
    if (laterAlike === true) return passes - 1;
    let slope = 0;
    for (let pass = 1; pass < Math.min(passes, 1000); pass++) slope += pass * fade ** (pass - 1);
    return slope;
}

/**
 * How many degrees of freedom the assumed measuring error counts for. The variance of a law that stands
 * alone is the assumed one (1) and the fitted one pooled by their degrees of freedom, which is the
 * posterior under a scaled inverse chi-squared prior (Gelman et al., Bayesian Data Analysis, ch. 3 and 14;
 * from memory). Without it a coupon of three rows would have intervals of plus or minus its own depth; if it counted for more,
 * a careful gauge would not be believed.
 */
export const PRIOR_FREEDOM = 1;

/** The pooled variance for a weighted sum of squared residuals; `prior` is how many degrees of freedom the assumed one counts for. */
export function pooledVariance(residualSum: number, degreesOfFreedom: number, prior = PRIOR_FREEDOM): number {
    return (prior + residualSum) / (prior + degreesOfFreedom);
}

/**
 * Depth that settings give, with the prediction interval at the given coverage for one new square: on the board that was
 * measured, or in the next piece where the law knows what pieces differ by.
 * Student's t on the spread; for a guess, or a law weighed against one, the interval is a ratio,
 * as many times shallower as deeper, since there the energy is uncertain by a factor.
 * Undefined for settings that are no settings (zero, negative, not finite).
 */
export function predict(law: DepthLaw, settings: Settings, coverage = 0.95): Interval | undefined {
    return predictDose(law, doseOf(settings), settings.passes, coverage);
}

/** Degrees of freedom of its spread: where the law does not fit, those of the settings, since squares of one setting miss it alike. */
export function pooledDegreesOfFreedom({ degreesOfFreedom, fits, notes }: DepthLaw): number | undefined {
    if (degreesOfFreedom === undefined) return undefined;
    return PRIOR_FREEDOM + (notes.includes('off-law') && fits !== undefined ? fits.between : degreesOfFreedom);
}

/** What the next piece adds: threshold and energy of another board are as many times as great, which is a factor of the dose. */
export function ofPieces(law: DepthLaw, dose: number, passes: number, coverage: number): number {
    if (law.pieces === undefined) return 0;
    const { sigma, freedom } = law.pieces;
    const perLogDose = signedDepth(law, dose, passes) > 0 ? -dose * depthSlopes(law, dose, passes)[0] : 0;
    return coverageFactor(coverage, freedom) * sigma * perLogDose;
}

/** What the bend (1/mm) of a wood whose squares seem straight may be: one standard deviation (own choice, by simulated woods). */
const UNSEEN_BEND = 0.65;

/**
 * How much a bend takes off beyond the strongest square, by which a straight law was laid: for one in 1/mm, in mm of depth. Of a pass that
 * takes x − c·x²/2 off, a line through the squares up to h is off by c·x·(x − h)/2 (own derivation). Nothing where squares reach.
 */
function unseenBend(law: DepthLaw, { dose, passes }: Place): number {
    const { degreesOfFreedom, bend, range } = law;
    if (degreesOfFreedom === undefined || bend !== undefined || range === undefined || dose <= range.high) return 0;
    const [each, most] = [dose, range.high].map((of) => Math.max(0, (of - law.threshold) / law.energy));
    return (each! * (each! - most!) * passesWorth(law, passes)) / 2;
}

/** Variance (mm2) of one more square about the law, at a depth in mm. */
export function squareVariance(law: DepthLaw, depth: number): number {
    return law.variance * measuringError(depth, law.measuring) ** 2;
}

/** One place of a law: dose of each pass (J/mm2), and passes. */
export interface Place {
    readonly dose: number;
    readonly passes: number;
}

/**
 * Covariance (mm2) of what a law may be off by at two places: its numbers, its bend, with which the other numbers move, and what
 * laws of another form that go as well with the squares say otherwise. What single squares scatter by is not in it.
 */
export function lawCovariance(law: DepthLaw, one: Place, other: Place): number {
    const { bending, rivals = [] } = law;
    const slopes = [one, other].map(({ dose, passes }) => depthSlopes(law, dose, passes));
    let sum = 0;
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) sum += slopes[0]![i]! * slopes[1]![j]! * law.covariance[3 * i + j]!;
    if (bending !== undefined) {
        const [a, b] = [one, other].map(({ dose, passes }, at) =>
            bending.along.reduce((all, along, i) => all + along * slopes[at]![i]!, bendSlope(law, dose, passes)),
        );
        sum += bending.error ** 2 * a! * b!;
    }
    sum += UNSEEN_BEND ** 2 * unseenBend(law, one) * unseenBend(law, other);
    const apart = ({ dose, passes }: Place, numbers: LawNumbers): number =>
        depthOf(numbers, dose, passes) - depthOf(law, dose, passes);
    return rivals.reduce((all, { numbers, weight }) => all + weight * apart(one, numbers) * apart(other, numbers), sum);
}

/**
 * Depth of one more square on the board that was measured, or of the mean of a pocket in it: what places and readings differ by does not
 * come into a mean of many, and no other board into either. Undefined as in predict.
 */
export function predictOnBoard(
    law: DepthLaw,
    settings: Settings,
    of: 'square' | 'pocket',
    coverage = 0.95,
): Interval | undefined {
    const { pieces: _, ...board } = law;
    return predictDose(board, doseOf(settings), settings.passes, coverage, of === 'pocket');
}

/** As predict, for a dose (J/mm2) of each pass. */
export function predictDose(law: DepthLaw, dose: number, passes: number, coverage = 0.95, ofMean = false): Interval | undefined {
    if (!(dose >= 0 && dose < 1e9 && passes >= 1 && passes <= 1e4)) return undefined;
    const signed = signedDepth(law, dose, passes);
    const value = depthOf(law, dose, passes);
    const slopes = depthSlopes(law, dose, passes);
    const variance = (ofMean ? 0 : squareVariance(law, value)) + lawCovariance(law, { dose, passes }, { dose, passes });
    const fitted = coverageFactor(coverage, pooledDegreesOfFreedom(law)) * Math.sqrt(Math.max(0, variance));
    const assumed = coverageFactor(coverage, undefined) * slopes[2] * law.fadeAssumed;
    const half = Math.hypot(fitted, assumed, ofPieces(law, dose, passes, coverage));
    if (!Number.isFinite(value) || !Number.isFinite(half)) return undefined;
    const low = law.degreesOfFreedom === undefined && value > 0 ? value ** 2 / (value + half) : signed - half;
    return { value, low: Math.max(0, low), high: Math.max(0, signed + half) };
}
