import type { Interval } from '../quantity/interval';
import { coverageFactor } from './distributions';
import { leastSquares } from './least-squares';

/** A measured depth over the one that was to be expected, on a day (counted in days from any start). */
export interface DriftPoint {
    readonly day: number;
    readonly ratio: number;
}

/** What depths have done over time. Ratios: 1 is as expected; of a wide range the ends may lie below nothing. */
export interface Drift {
    /** The mean ratio of each day, in order: what changes from day to day changes all squares of a day alike. */
    readonly days: readonly DriftPoint[];
    /** The mean over the days, with the range in which it lies (95 %); absent with fewer than two. */
    readonly level?: Interval;
    /** Change of the ratio in `month` days, with its range (95 %); absent where the days are too few to tell. */
    readonly slope?: Interval;
    /** The range of the slope lies on one side of zero: it is more than the scatter of the days. */
    readonly told: boolean;
}

/** The days for which a slope is told. */
export const month = 30;
/** Fewer different days than this tell no slope: with two, every line fits. */
export const leastDays = 3;

/** A straight line through the days' means by least squares, with Student's t on the scatter about it. */
export function driftOf(points: readonly DriftPoint[], coverage = 0.95): Drift {
    const days = meansOf(points);
    const level = levelOf(days, coverage);
    const slope = days.length < leastDays ? undefined : slopeOf(days, coverage);
    return {
        days,
        ...(level !== undefined && { level }),
        ...(slope !== undefined && { slope }),
        told: slope !== undefined && (slope.low > 0 || slope.high < 0),
    };
}

function meansOf(points: readonly DriftPoint[]): DriftPoint[] {
    const sums = new Map<number, { sum: number; count: number }>();
    for (const { day, ratio } of points) {
        if (!Number.isFinite(day) || !(ratio >= 0 && ratio < 1e6)) continue;
        const known = sums.get(day) ?? { sum: 0, count: 0 };
        sums.set(day, { sum: known.sum + ratio, count: known.count + 1 });
    }
    return [...sums].map(([day, { sum, count }]) => ({ day, ratio: sum / count })).sort((a, b) => a.day - b.day);
}

function levelOf(days: readonly DriftPoint[], coverage: number): Interval | undefined {
    const fit = leastSquares(
        days.map(() => [1]),
        days.map(({ ratio }) => ratio),
    );
    return fit?.errors === undefined ? undefined : around(fit.parameters[0]!, fit.errors[0]!, fit.freedom, coverage);
}

function slopeOf(days: readonly DriftPoint[], coverage: number): Interval | undefined {
    // Counted from the middle, so that slope and level do not depend on each other.
    const middle = days.reduce((sum, { day }) => sum + day, 0) / days.length;
    const fit = leastSquares(
        days.map(({ day }) => [1, (day - middle) / month]),
        days.map(({ ratio }) => ratio),
    );
    return fit?.errors === undefined ? undefined : around(fit.parameters[1]!, fit.errors[1]!, fit.freedom, coverage);
}

function around(value: number, error: number, freedom: number, coverage: number): Interval {
    const half = coverageFactor(coverage, freedom) * error;
    return { value, low: value - half, high: value + half };
}
