import statistics from 'jstat';

const { centralF, normal, studentt } = statistics.jStat;

/** Quantile of the standard normal distribution. */
export function normalQuantile(probability: number): number {
    return normal.inv(probability, 0, 1);
}

/** Cumulative standard normal distribution. */
export function normalCumulative(x: number): number {
    return normal.cdf(x, 0, 1);
}

/** Quantile of Student's t distribution of so many degrees of freedom, to about nine digits. */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
    // The library stops at seven digits; one step of Newton's on its own distribution adds the rest.
    const near = studentt.inv(probability, degreesOfFreedom);
    const step = (studentt.cdf(near, degreesOfFreedom) - probability) / studentt.pdf(near, degreesOfFreedom);
    return Math.abs(step) < 1e-5 * Math.abs(near) ? near - step : near;
}

/** Cumulative Student's t distribution. */
export function studentCumulative(t: number, degreesOfFreedom: number): number {
    return studentt.cdf(t, degreesOfFreedom);
}

/** How often a ratio of two mean squares with these degrees of freedom comes out greater than this by chance (F distribution). */
export function fTail(ratio: number, degreesOfFreedom: number, freedomBelow: number): number {
    // By symmetry, so that a small tail is not what is left of one.
    return ratio > 0 ? centralF.cdf(1 / ratio, freedomBelow, degreesOfFreedom) : 1;
}

/**
 * Two-sided factor for a coverage such as 0.95. `degreesOfFreedom` is the number of degrees of freedom that the
 * spread was estimated with; undefined where the spread is assumed, not estimated (then it is the normal's).
 */
export function coverageFactor(coverage: number, degreesOfFreedom: number | undefined): number {
    const oneSided = (1 + Math.min(Math.max(coverage, 0), 1 - 1e-9)) / 2;
    return degreesOfFreedom === undefined ? normalQuantile(oneSided) : studentQuantile(oneSided, degreesOfFreedom);
}

/** The middle value, or the mean of the two middle ones of an even count. NaN of nothing. */
export function medianOf(values: readonly number[]): number {
    const sorted = values.toSorted((a, b) => a - b);
    const middle = Math.floor(sorted.length / 2);
    if (sorted.length % 2 === 1) return sorted[middle]!;
    return sorted.length === 0 ? Number.NaN : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
