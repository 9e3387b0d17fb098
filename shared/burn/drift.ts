import type { Interval } from '../quantity/interval';
import { againstEarlier, ewmaChart } from './control-chart';
import { coverageFactor } from './distributions';
import { leastSquares, type Rows } from './least-squares';
import type { PowerDay } from './measured-power';

/** Where the power of a laser on a board has been going, by the days of its runs. Ratios: 1 is the power of the coupon's day. */
export interface Drift {
    /** From the oldest to the newest, all of them since the last event after which a laser may burn otherwise. */
    readonly days: readonly PowerDay[];
    /** Mean over the days, with the range in which it lies (95 %); absent with fewer than two. */
    readonly level?: Interval;
    /** Absent while chance alone would do. */
    readonly told?: ToldDrift;
}

/** A change of the power that is more than chance. */
export interface ToldDrift {
    /** The first day on which it shows, ISO 8601. */
    readonly since: string;
    /** How many days of runs show it. */
    readonly days: number;
    /** Power over that of `MONTH` days before (95 %), where it has been changing bit by bit since that day. */
    readonly perMonth?: Interval;
    /** Mean power of the days since over that of the days before (95 %), where it changed at once. */
    readonly step?: Interval;
}

/** Days for which a slope is told. */
const MONTH = 30;
/** Days that come before the first that is compared: two say how much days differ. */
const EARLIER = 2;
/** The least days of runs by which a drift can be told. */
export const MIN_DAYS = EARLIER + 1;

/**
 * Share of the newest day in the chart's mean, and its limits in standard errors, those of the handbook. How often they are
 * passed where nothing changes, and how soon where something does: npm run simulate.
 */
const CHART = { centre: 0, sigma: 1, weight: 0.1, width: 3 } as const;

/**
 * Whether the power changes from day to day more than chance would have it, looked at again after each day: a chart of moving
 * means over each day against those before it (control-chart.ts). Neither the power on the coupon's day nor the scatter is
 * taken for known, so that what squares and pockets differ by all along is no drift. O(days), and
 * O(days²) where one is told.
 *
 * @param days in order, of one board since its last event
 */
export function driftOf(days: readonly PowerDay[]): Drift {
    const level = estimate(days, () => [1]);
    const told = toldOf(days);
    return { days, ...(level !== undefined && { level }), ...(told !== undefined && { told }) };
}

function toldOf(days: readonly PowerDay[]): ToldDrift | undefined {
    const values = days.map(({ logFactor, error, rounding }) => ({ value: logFactor, error, rounding }));
    const chart = ewmaChart(againstEarlier(values), CHART);
    const newest = chart.at(-1);
    if (newest === undefined || (newest.low <= newest.mean && newest.mean <= newest.high)) return undefined;
    const { step, first } = changeOf(days);
    const change = estimate(days, (each, index) => [1, step ? Number(index >= first) : rampOf(each, days[first]!)]);
    return {
        since: days[first]!.date,
        days: days.length - first,
        ...(change !== undefined && (step ? { step: change } : { perMonth: change })),
    };
}

/** Months that have gone by since a day, none before it. */
function rampOf({ day }: PowerDay, first: PowerDay): number {
    return Math.max(0, day - first.day) / MONTH;
}

/**
 * How the power came to be another one: at once from a day on, or bit by bit since a day, whichever leaves the least squares over
 * all days on which it may have been. O(days²).
 */
function changeOf(days: readonly PowerDay[]): { readonly step: boolean; readonly first: number } {
    let best = { step: true, first: days.length - 1, left: Number.POSITIVE_INFINITY };
    for (let first = 1; first < days.length; first++) {
        const left = squaresLeft(days, (_, index) => Number(index >= first));
        if (left < best.left) best = { step: true, first, left };
    }
    for (let first = 0; first < days.length - 1; first++) {
        const left = squaresLeft(days, (each) => rampOf(each, days[first]!));
        // With one day after it, a slope is a step.
        if (left < best.left * (1 - 1e-9)) best = { step: false, first, left };
    }
    return best;
}

/** Weighted squares left by a level and one more term. O(days). */
function squaresLeft(days: readonly PowerDay[], term: (day: PowerDay, index: number) => number): number {
    let [weights, x, y] = [0, 0, 0];
    for (const [index, each] of days.entries()) {
        const weight = each.error ** -2;
        weights += weight;
        x += weight * term(each, index);
        y += weight * each.logFactor;
    }
    let [xx, xy, yy] = [0, 0, 0];
    for (const [index, each] of days.entries()) {
        const weight = each.error ** -2;
        const [a, b] = [term(each, index) - x / weights, each.logFactor - y / weights];
        xx += weight * a * a;
        xy += weight * a * b;
        yy += weight * b * b;
    }
    return xx > 0 ? yy - xy ** 2 / xx : yy;
}

/** The last parameter of a linear model of the days' powers, as a ratio (95 %); undefined where they are too few, or all alike in it. */
function estimate(days: readonly PowerDay[], columns: (day: PowerDay, index: number) => readonly number[]): Interval | undefined {
    if (days.length === 0) return undefined;
    const rows: Rows = days.map(columns);
    const fit = leastSquares(
        rows,
        days.map(({ logFactor }) => logFactor),
        days.map(({ error }) => error),
    );
    if (fit?.errors === undefined || fit.variance === undefined) return undefined;
    // A gauge that shows the same again and again is no surer for it than its steps are fine.
    const rounded = days.reduce((sum, { rounding, error }) => sum + (rounding / error) ** 2, 0) / days.length;
    const last = fit.parameters.length - 1;
    const error = Math.sqrt(Math.max(fit.variance, rounded) * fit.unscaledCovariance.at(-1)!);
    const half = coverageFactor(0.95, fit.degreesOfFreedom) * error;
    const value = fit.parameters[last]!;
    return { value: Math.exp(value), low: Math.exp(value - half), high: Math.exp(value + half) };
}
