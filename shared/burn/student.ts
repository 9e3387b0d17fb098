import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import studentQuantile from '@stdlib/stats-base-dists-t-quantile';

/**
 * Two-sided factor for a coverage such as 0.95. `freedom` is the number of degrees of freedom that the
 * spread was estimated with; undefined where the spread is assumed, not estimated (then it is the normal's).
 */
export function coverageFactor(coverage: number, freedom: number | undefined): number {
    const oneSided = (1 + Math.min(Math.max(coverage, 0), 1 - 1e-12)) / 2;
    return freedom === undefined ? normalQuantile(oneSided, 0, 1) : studentQuantile(oneSided, freedom);
}
