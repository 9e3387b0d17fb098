import type { Interval } from '../quantity/interval';
import type { Coupon, Laser } from '../recipe/stock';
import { spotOf } from './beam';
import { coverageFactor } from './distributions';
import { PRIOR_FREEDOM, pooledVariance } from './law';
import { leastSquares } from './least-squares';
import { pitchForSpot } from './pitch';
import { wattsOf } from './power-curve';
import type { ToneLaw, ToneRow } from './tone-law';

/** Error of judging a tone where the row says none: beside a grey scale of ten steps. @commonPractice */
const JUDGING = 0.05;
/** A square at an end of the scale tells only that its tone is at least, or at most, that. */
const WITHIN = { low: 0.02, high: 0.98 };
const mostRows = 200;

/** The usable squares of a coupon that were judged by tone. */
export function toneRowsOf(coupon: Coupon | undefined, laser: Laser | undefined): ToneRow[] {
    const pitch = coupon?.pitch?.value ?? pitchForSpot(spotOf(laser));
    return (coupon?.tones ?? []).slice(0, mostRows).flatMap(({ power, speed, passes, tone }) => {
        const dose = ((wattsOf(power, laser) ?? Number.NaN) / (speed.value * (pitch ?? Number.NaN))) * passes;
        const row = { dose, tone: tone.value, tolerance: tone.tolerance };
        return usable(row) ? [row] : [];
    });
}

function usable({ dose, tone, tolerance }: ToneRow): boolean {
    return dose > 1e-6 && dose < 1e6 && tone >= 0 && tone <= 1 && tolerance < 1;
}

/**
 * The line through judged squares, weighted by how well each was judged; from nothing where they are too few or
 * too much alike to tell an onset, or it would lie below nothing. Undefined where none lies inside of the scale, or they get paler with dose.
 */
export function fitTone(rows: readonly ToneRow[]): ToneLaw | undefined {
    const inside = rows.filter((row) => usable(row) && row.tone >= WITHIN.low && row.tone <= WITHIN.high);
    const y = inside.map(({ tone }) => tone);
    const errors = inside.map(({ tolerance }) => (tolerance > 0 ? Math.max(tolerance, 1e-3) : JUDGING));
    const line =
        inside.length < 3
            ? undefined
            : leastSquares(
                  inside.map(({ dose }) => [1, dose]),
                  y,
                  errors,
              );
    const [offset = 0, slope = 0] = line?.parameters ?? [];
    if (line !== undefined && slope > 0 && offset <= 0) {
        const [a = 0, b = 0, c = 0, d = 0] = line.spread;
        const variance = pooledVariance(line.residualSum, line.freedom);
        return { offset, slope, covariance: [a, b, c, d], variance, freedom: line.freedom, rows };
    }
    const ray = leastSquares(
        inside.map(({ dose }) => [dose]),
        y,
        errors,
    );
    const steep = ray?.parameters[0];
    if (ray === undefined || steep === undefined || !(steep > 0) || (line !== undefined && slope <= 0)) return undefined;
    const covariance = [0, 0, 0, ray.spread[0] ?? 0] as const;
    return {
        offset: 0,
        slope: steep,
        covariance,
        variance: pooledVariance(ray.residualSum, ray.freedom),
        freedom: ray.freedom,
        rows,
    };
}

/** Dose (J/mm2) of the darkest tone. */
export function darkestDose({ offset, slope }: ToneLaw): number {
    return (1 - offset) / slope;
}

/** Dose (J/mm2) below which nothing colours. */
export function onsetDose({ offset, slope }: ToneLaw): number {
    return -offset / slope;
}

/** Dose (J/mm2) that gives a tone. */
export function doseForTone({ offset, slope }: ToneLaw, tone: number): number {
    return (tone - offset) / slope;
}

/** Whether a tone is darker than any square, by more than a tone can be judged: beyond the last square nothing says that the line goes on. */
export function isDarkerThanJudged({ rows }: ToneLaw, tone: number): boolean {
    return tone > Math.max(...rows.map((row) => row.tone)) + JUDGING + 1e-9;
}

/** Tone that a dose gives, with the interval for one new square judged as the others were (Student's t). */
export function predictTone({ offset, slope, covariance, variance, freedom }: ToneLaw, dose: number, coverage = 0.95): Interval {
    const [a, b, c, d] = covariance;
    const spread = variance * (JUDGING ** 2 + a + (b + c) * dose + d * dose ** 2);
    const half = coverageFactor(coverage, freedom + PRIOR_FREEDOM) * Math.sqrt(Math.max(0, spread));
    const line = offset + slope * dose;
    const held = (tone: number): number => Math.min(1, Math.max(0, tone));
    return { value: held(line), low: held(line - half), high: held(line + half) };
}
