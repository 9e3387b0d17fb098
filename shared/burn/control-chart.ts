import { normalQuantile, studentCumulative } from './distributions';

/** Where a chart of means stands after a value, with the limits that chance rarely passes. */
export interface ChartPoint {
    readonly mean: number;
    readonly low: number;
    readonly high: number;
}

/** What an exponentially weighted chart is drawn about, and how. */
export interface EwmaOptions {
    /** Mean of the values while nothing has changed, and their standard deviation. */
    readonly centre: number;
    readonly sigma: number;
    /** Share of the newest value in the mean, above 0, up to 1. */
    readonly weight: number;
    /** Standard errors of the mean from the centre to each limit. */
    readonly width: number;
}

/**
 * Exponentially weighted moving average with its control limits, one point a value (NIST/SEMATECH e-Handbook of Statistical
 * Methods, 6.3.2.4). The limits are the exact ones, which widen from the first value to the handbook's.
 */
export function ewmaChart(values: readonly number[], { centre, sigma, weight, width }: EwmaOptions): ChartPoint[] {
    let mean = centre;
    return values.map((value, index) => {
        mean = weight * value + (1 - weight) * mean;
        const variance = (weight / (2 - weight)) * (1 - (1 - weight) ** (2 * (index + 1)));
        const half = width * sigma * Math.sqrt(variance);
        return { mean, low: centre - half, high: centre + half };
    });
}

/** A value with the standard errors that are known of it; their common scale is not. */
export interface ChartedValue {
    readonly value: number;
    readonly error: number;
    /** The part of it that rounding alone makes, a standard deviation in the value's own unit. */
    readonly rounding: number;
}

/** Normal quantiles beyond these say no more than that it was no chance. */
const FURTHEST = 8;

/**
 * Each value against those before it, from the third on, as a standard normal: its Student's t to the weighted mean and
 * scatter of the earlier ones, turned into the normal quantile of the same probability. While nothing changes these are
 * independent of each other, whatever the level and the scatter are, so that a chart needs neither beforehand (Quesenberry,
 * SPC Q Charts for Start-Up Processes, Journal of Quality Technology 23, 1991; with weights: Brown, Durbin & Evans,
 * Journal of the Royal Statistical Society B 37, 1975; both from memory). The scatter is at least that of rounding. O(n).
 */
export function againstEarlier(values: readonly ChartedValue[]): number[] {
    const found: number[] = [];
    let [weights, mean, squares, rounded] = [0, 0, 0, 0];
    for (const [count, { value, error, rounding }] of values.entries()) {
        const weight = error ** -2;
        rounded += (rounding / error) ** 2;
        if (count >= 2) {
            const degreesOfFreedom = count - 1;
            const scale = Math.max(squares / degreesOfFreedom, rounded / (count + 1));
            const t = (value - mean) / Math.sqrt(scale * (error ** 2 + 1 / weights));
            // Without any scatter, what is the same is the same, and what is not is no chance.
            found.push(Number.isNaN(t) ? 0 : normalOf(t, degreesOfFreedom));
        }
        const apart = value - mean;
        squares += (apart ** 2 * weight * weights) / (weights + weight);
        weights += weight;
        mean += (apart * weight) / weights;
    }
    return found;
}

function normalOf(t: number, degreesOfFreedom: number): number {
    if (!Number.isFinite(t)) return Math.sign(t) * FURTHEST;
    // From the lower tail, where a probability keeps its digits.
    const quantile = normalQuantile(studentCumulative(-Math.abs(t), degreesOfFreedom));
    return t === 0 ? 0 : Math.sign(t) * Math.min(FURTHEST, Math.abs(quantile));
}
