import { daysSince1970 } from '../quantity/calendar';
import { doseFor, doseOf, passesWorth } from './dose';
import { readingOf } from './fit-problem';
import { stepOfGauge } from './gauge-step';
import { type DepthLaw, measuringError, pooledVariance } from './law';
import { DAY_TO_DAY, type PowerByDay, type PowerDay } from './measured-power';
import { type BurnRow, usable } from './rows';
import { withDoseFactor } from './tone';

/** A measured square with the day on which it was burnt, ISO 8601. */
export interface DatedRow {
    readonly date: string;
    readonly row: BurnRow;
}

/** Days after which a day counts half: found best, or nearly so, in simulated years of a laser (tests/burn/year-of-laser.ts). */
const HALF_LIFE = 15;
/** How far a laser strays from its coupon at all, likewise: what holds back a single run a year later. @commonPractice */
const STRAYS = 0.3;
/** A pocket that says the power was beyond these parts of what it should have been was misread: nothing ages like that. */
const CREDIBLE = { low: 0.4, high: 2.5 };
/** How many days the assumed scatter of a day counts for beside those that are seen (own choice). */
const DAYS_ASSUMED = 3;
/** Older days no longer weigh anything, and a heap of hostile ones must not hold anything up. */
const MAX_DAYS = 500;

/**
 * How much power is there against the power that a law was measured with, from pockets that were burnt since. One point a
 * day, as whatever changes from day to day changes all of a day alike; a day fades with a half-life, so that the newest
 * count most and an old step is forgotten. A mean, not a slope: a slope overshoots after a step.
 *
 * The mean is that of discounted weights (West & Harrison, Bayesian Forecasting and Dynamic Models, ch. 6; from memory),
 * so its error also covers what may have changed since. Undefined where no pocket can be compared. O(rows).
 *
 * @param burnt day on which the law's own squares were burnt: a day like others, on which the factor was 1, as surely as
 * they tell it; absent where they no longer hold
 * @param today day for which the power is asked, where it is later than the newest row: nobody knows what became of it
 * since, so the factor stays and its error grows
 */
export function powerByDay(law: DepthLaw, rows: readonly DatedRow[], burnt?: string, today?: string): PowerByDay | undefined {
    const days = powerDays(law, rows).slice(-MAX_DAYS);
    const newest = days.at(-1);
    if (newest === undefined) return undefined;
    const age = (day: number): number => 2 ** (-Math.max(0, newest.day - day) / HALF_LIFE);
    const dayOfLaw = burnt === undefined ? undefined : daysSince1970(burnt);
    let weights = STRAYS ** -2 + (dayOfLaw === undefined ? 0 : age(dayOfLaw) / (DAY_TO_DAY ** 2 + newest.lawError ** 2));
    let sum = 0;
    for (const { day, logFactor, error } of days) {
        const weight = age(day) / error ** 2;
        weights += weight;
        sum += weight * logFactor;
    }
    const logFactor = sum / weights;
    const [count, squares] = days.reduce(
        ([n, total], each) => [n + age(each.day), total + age(each.day) * ((each.logFactor - logFactor) / each.error) ** 2],
        [0, 0],
    );
    // Days that scatter more than was assumed make the mean less sure, in the way in which squares do.
    const variance = Math.max(1, pooledVariance(squares, count, DAYS_ASSUMED));
    const idle = Math.max(0, (today === undefined ? newest.day : (daysSince1970(today) ?? newest.day)) - newest.day);
    const left = STRAYS ** -2 + (weights - STRAYS ** -2) * 2 ** (-idle / HALF_LIFE);
    return { logFactor, error: Math.sqrt(variance / left), days: days.map(({ lawError: _, ...day }) => day) };
}

function powerDays(law: DepthLaw, rows: readonly DatedRow[]): (PowerDay & { readonly lawError: number })[] {
    const step = stepOfGauge(rows.map(({ row }) => row.depth));
    const found = new Map<string, { weights: number; sum: number; rounding: number; rows: number; lawError: number }>();
    for (const { date, row } of rows) {
        const point = powerOf(law, row);
        if (point === undefined) continue;
        const known = found.get(date) ?? { weights: 0, sum: 0, rounding: 0, rows: 0, lawError: 0 };
        const weight = point.error ** -2;
        found.set(date, {
            weights: known.weights + weight,
            sum: known.sum + point.logFactor * weight,
            // Depths of a day are much alike and are rounded alike: that does not average out.
            rounding: known.rounding + (point.perMillimetre * step * weight) / Math.sqrt(12),
            rows: known.rows + 1,
            lawError: Math.max(known.lawError, point.lawError),
        });
    }
    return [...found]
        .flatMap(([date, { weights, sum, rounding, rows: count, lawError }]) => {
            const day = daysSince1970(date);
            if (day === undefined) return [];
            const error = Math.hypot(weights ** -0.5, DAY_TO_DAY);
            return { date, day, logFactor: sum / weights, error, rounding: rounding / weights, rows: count, lawError };
        })
        .sort((a, b) => a.day - b.day);
}

interface MeasuredFactor {
    readonly logFactor: number;
    /** What a millimetre of depth makes of it. */
    readonly perMillimetre: number;
    /** Its standard error, of the reading and of the law. */
    readonly error: number;
    readonly lawError: number;
}

/** The power that a law needs for the depth that was measured, over the one that was set; undefined where a depth tells nothing of it. */
function powerOf(law: DepthLaw, row: BurnRow): MeasuredFactor | undefined {
    if (!usable(row) || !(row.depth > 0)) return undefined;
    const needed = doseFor(law, row.depth, row.passes);
    const factor = needed / doseOf(row);
    if (!(factor >= CREDIBLE.low && factor <= CREDIBLE.high)) return undefined;
    const reading = Math.sqrt(law.variance) * measuringError(row.depth, readingOf(row));
    const worth = passesWorth(law, row.passes);
    const [tt = 0, te = 0, , , ee = 0] = law.covariance;
    const each = row.depth / worth;
    const straight = (needed - law.threshold) / law.energy;
    const ofLaw = tt + 2 * te * straight + ee * straight ** 2;
    const perMillimetre = law.energy / (worth * needed * (1 - (law.bend ?? 0) * each));
    return {
        logFactor: Math.log(factor),
        perMillimetre,
        error: perMillimetre * reading,
        lawError: Math.sqrt(Math.max(0, ofLaw)) / needed,
    };
}

/**
 * A law as it holds with another power than that of its own day: every dose does as much as one that is the factor greater
 * did then, and the factor's error joins those of the law.
 */
export function withPower(law: DepthLaw, power: PowerByDay): DepthLaw {
    const factor = Math.exp(power.logFactor);
    const threshold = law.threshold / factor;
    const energy = law.energy / factor;
    const scales = [1 / factor, 1 / factor, 1];
    const slopes = [threshold, energy, 0];
    const covariance = law.covariance.map((each, at) => {
        const [i, j] = [Math.floor(at / 3), at % 3];
        return each * scales[i]! * scales[j]! + power.error ** 2 * slopes[i]! * slopes[j]!;
    });
    const { tone, range, bending } = law;
    return {
        ...law,
        threshold,
        energy,
        errors: { ...law.errors, threshold: Math.sqrt(covariance[0]!), energy: Math.sqrt(covariance[4]!) },
        covariance,
        darkest: law.darkest / factor,
        ...(tone !== undefined && { tone: withDoseFactor(tone, factor, power.error) }),
        ...(bending !== undefined && { bending: { ...bending, along: scaled(bending.along, scales) } }),
        ...(range !== undefined && { range: { low: range.low / factor, high: range.high / factor } }),
        power,
    };
}

function scaled(
    [threshold, energy, fade]: readonly [number, number, number],
    scales: readonly number[],
): [number, number, number] {
    return [threshold * scales[0]!, energy * scales[1]!, fade * scales[2]!];
}
