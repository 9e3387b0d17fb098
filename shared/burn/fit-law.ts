import { coverageFactor, medianOf } from './distributions';
import { depthOf } from './dose';
import { lawOrder, type Numbers, type Problem, readingOf } from './fit-problem';
import { stepOfGauge } from './gauge-step';
import { type LackOfFit, lackOfFit } from './lack-of-fit';
import { type DepthLaw, FADE_SPREAD, type LawNote, type LawRow, pooledVariance } from './law';
import type { BurnRow } from './rows';

/** The law with its covariance, its rows and what they explain; `weighed` if it was weighed against the guess. */
export function lawOf(problem: Problem, found: Numbers, weighed: boolean): DepthLaw {
    const { numbers, free, fit, active } = found;
    const notes: LawNote[] = [...found.notes];
    const degreesOfFreedom = weighed ? active.length : fit.degreesOfFreedom;
    const fits = weighed ? undefined : fitsOf(problem, found);
    const isOff = fits !== undefined && isOffLaw(fits);
    if (isOff) notes.push('off-law');
    const { variance, ofMeans } = isOff
        ? offVariance(fits, pooledVariance(fit.residualSum, degreesOfFreedom))
        : same(pooledVariance(fit.residualSum, degreesOfFreedom));
    const rows = describeRows(problem, found, weighed);
    if (!weighed && fit.degreesOfFreedom < 3) notes.push('few-rows');
    if (rows.some((row) => row.outlier)) notes.push('outliers');

    const covariance = new Array<number>(9).fill(0);
    // Of a bent law with the bend held: what that may be off by is kept beside it.
    const held = free.indexOf('bend');
    const of = (i: number, j: number): number => fit.unscaledCovariance[i * free.length + j]!;
    const left = (i: number, j: number): number => of(i, j) - (held < 0 ? 0 : (of(i, held) * of(held, j)) / of(held, held));
    free.forEach((a, i) => {
        free.forEach((b, j) => {
            if (i !== held && j !== held) covariance[3 * lawOrder.indexOf(a) + lawOrder.indexOf(b)] = ofMeans * left(i, j);
        });
    });
    const along = lawOrder.map((name) => (free.includes(name) ? of(free.indexOf(name), held) / of(held, held) : 0));
    const fadeAssumed = free.includes('fade') || notes.includes('fade-held') ? 0 : FADE_SPREAD;
    const pitch = problem.rows[0]!.pitch;
    const doses = problem.doses;
    return {
        ...numbers,
        errors: {
            threshold: Math.sqrt(covariance[0]!),
            energy: Math.sqrt(covariance[4]!),
            fade: Math.sqrt(covariance[8]!) || fadeAssumed,
        },
        covariance,
        ...(held >= 0 && {
            bending: { error: Math.sqrt(ofMeans * of(held, held)), along: [along[0]!, along[1]!, along[2]!] as const },
        }),
        fadeAssumed,
        variance,
        measuring: medianOf(problem.rows.map(readingOf)),
        ...(!weighed && { degreesOfFreedom }),
        darkest: numbers.threshold > 0 ? numbers.threshold : problem.guess.threshold,
        ...(problem.rows.every((row) => row.pitch === pitch) && { pitch }),
        ...(!weighed && explainVariation(problem, found)),
        ...(fits !== undefined && { fits }),
        range: { low: Math.min(...doses), high: Math.max(...doses) },
        rows,
        guess: false,
        notes,
    };
}

/** A law is said not to fit where chance would have it so less often than this. */
const RARE = 0.01;
/** What means lie off by, in measuring errors, before it matters to anybody (own choice). */
const MATTERS = 0.5;

function isOffLaw({ probability, off, pure, each }: LackOfFit): boolean {
    return probability < RARE && Math.sqrt((off - pure) / each) > MATTERS;
}

function fitsOf({ rows }: Problem, { fit, active, sigmas, free }: Numbers): LackOfFit | undefined {
    const own = active.map((i) => rows[i]!);
    const step = stepOfGauge(own.map(({ depth }) => depth));
    // A reading is rounded to the gauge's step, evenly: its variance is a twelfth of the step squared.
    const rounding = step ** 2 / 12 / medianOf(active.map((i) => sigmas[i]!)) ** 2;
    const alike = own.map(({ power, speed, pitch, passes }) => `${power} ${speed} ${pitch} ${passes}`);
    return lackOfFit(
        alike,
        active.map((i, at) => fit.residuals[at]! / sigmas[i]!),
        rounding,
        free.length,
    );
}

/**
 * Variances where the law does not fit: what it is off by goes with the setting, so that repeating squares makes neither the
 * numbers surer nor a new square.
 */
function offVariance(fits: LackOfFit, pooled: number): { variance: number; ofMeans: number } {
    const ofMeans = Math.max(pooled, pooledVariance(fits.off * fits.between, fits.between));
    return { variance: Math.max(pooled, (ofMeans - fits.pure) / fits.each + fits.pure), ofMeans };
}

function same(variance: number): { variance: number; ofMeans: number } {
    return { variance, ofMeans: variance };
}

function describeRows({ rows, doses }: Problem, { numbers, fit, active, sigmas, free }: Numbers, weighed: boolean): LawRow[] {
    const degreesWithout = fit.degreesOfFreedom - 1;
    // Shared out over all rows (Bonferroni), so that a good coupon of many rows rarely accuses one.
    const limit = degreesWithout >= 1 ? coverageFactor(1 - 0.05 / active.length, degreesWithout) : Number.POSITIVE_INFINITY;
    return rows.map((row, i) => {
        const fitted = depthOf(numbers, doses[i]!, row.passes);
        const at = active.indexOf(i);
        const base = { ...row, dose: doses[i]!, fitted, residual: row.depth - fitted, outlier: false };
        if (at < 0 || weighed || degreesWithout < 1 || fit.leverages[at]! > 1 - 1e-9) return base;
        const scaled = fit.residuals[at]! / sigmas[i]!;
        const left = 1 - fit.leverages[at]!;
        const varianceWithout = Math.max(0, fit.residualSum - scaled ** 2 / left) / degreesWithout;
        const studentised = scaled === 0 ? 0 : scaled / Math.sqrt(varianceWithout * left);
        if (!Number.isFinite(studentised) || free.length === 0) return base;
        // What lies within the measuring error is no outlier, however well the others fit.
        const isFar = Math.abs(studentised) > limit && Math.abs(scaled) > 1;
        return { ...base, studentised, outlier: isFar && !isConfirmed(rows, i, sigmas[i]!) };
    });
}

/** Whether another square of the same settings came out alike: then neither is a slip, and the law is what does not fit. */
function isConfirmed(rows: readonly BurnRow[], index: number, unit: number): boolean {
    const row = rows[index]!;
    return rows.some(
        (other, at) =>
            at !== index &&
            (['power', 'speed', 'pitch', 'passes'] as const).every((key) => other[key] === row[key]) &&
            Math.abs(other.depth - row.depth) < unit,
    );
}

function explainVariation(
    { rows }: Problem,
    { fit, active, sigmas }: Numbers,
): { rSquared?: number; predictedRSquared?: number } {
    const weights = active.map((i) => sigmas[i]! ** -2);
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = active.reduce((sum, i, k) => sum + weights[k]! * rows[i]!.depth, 0) / all;
    const total = active.reduce((sum, i, k) => sum + weights[k]! * (rows[i]!.depth - mean) ** 2, 0);
    if (!(total > 0)) return {};
    const left = active.reduce(
        (sum, _, k) => sum + weights[k]! * (fit.residuals[k]! / Math.max(1e-9, 1 - fit.leverages[k]!)) ** 2,
        0,
    );
    return { rSquared: 1 - fit.residualSum / total, predictedRSquared: 1 - left / total };
}
