import { depthOf, doseFor } from '../../shared/burn/dose';
import { driftOf } from '../../shared/burn/drift';
import { fitCoupon } from '../../shared/burn/fit';
import { predict } from '../../shared/burn/law';
import { lawOfDay } from '../../shared/burn/law-of-day';
import { type DatedRow, powerByDay } from '../../shared/burn/power-by-day';
import { nowhere } from '../../shared/quantity/where';
import type { Coupon } from '../../shared/recipe/stock';
import { ladder, pitch, readDepth, scatter, simulatedCoupon } from '../kit/simulated-coupon';
import { bell, shed } from './stock';

/*
 * A year of a laser that is simulated: a coupon on the first day, then pockets of one depth, each planned with the law as
 * it is known on its day, burnt with the power that is really there, and written down. The figures of the bench are
 * assumed; those of the worlds are chosen to be as bad as lasers get. @commonPractice
 */

/** Log of the power that is there, over that of the first day, by days since; `roll` is for a world that is itself chance. */
type World = (bell: () => number) => (day: number) => number;

export type WorldName = 'unchanged' | 'steady' | 'slow-then-fast' | 'step' | 'walk';

/** A workshop's own ways, beside what its laser does. */
export interface Ways {
    /** What pockets of jobs come out by beside squares of a coupon, all along: 0.1 is 10 % deeper. */
    readonly offset?: number;
    /** Steps in which its gauge reads, mm. */
    readonly gauge?: number;
}

/** How runs count: one power a day that fades, each like a square of the coupon, or not at all. */
export type Rule = 'by day' | 'all alike' | 'coupon only';

export const worlds: Readonly<Record<WorldName, World>> = {
    unchanged: () => () => 0,
    // 28 % less in a year.
    steady: () => (day) => (Math.log(0.72) * day) / 365,
    // 5 % less in eight months, then 25 % in four.
    'slow-then-fast': () => (day) =>
        (Math.log(0.95) * Math.min(day, 240)) / 240 + (Math.log(0.75) * Math.max(0, day - 240)) / 125,
    // A mirror slips: 18 % less from one day to the next, and nobody writes it down.
    step: () => (day) => (day < 170 ? 0 : Math.log(0.82)),
    // 1 % a day, up or down: 19 % in a year.
    walk: (roll) => {
        const path = [0];
        for (let day = 1; day <= 366; day++) path.push(path[day - 1]! + 0.01 * roll());
        return (day) => path[Math.min(366, Math.round(day))]!;
    },
};

const truth = { threshold: 0.08, energy: 2.4, fade: 0.95 };
const target = 0.54;
const passes = 3;
/** Standard deviation of the power of a day. */
const DAY = 0.015;
const runsAYear = 58;

export interface SimulatedRun {
    readonly day: number;
    /** True mean depth of the pocket over the planned one, less one. */
    readonly miss: number;
    /** The true depth lay in the interval that was told for it. */
    readonly held: boolean;
    /** So did the measured one. */
    readonly readHeld: boolean;
}

export function simulateYear(
    world: World,
    seed: number,
    rule: Rule = 'by day',
    { offset = 0, gauge = 0.01 }: Ways = {},
): { readonly runs: readonly SimulatedRun[]; readonly rows: readonly DatedRow[]; readonly coupon: Coupon } {
    const roll = bell(seed);
    const power = world(roll);
    const measured = (depth: number): number => readDepth(depth, roll, { ...scatter, gauge, least: 0 });
    const dose = (watts: number, speed: number): number => watts / (speed * pitch);
    const dayOfCoupon = DAY * roll();
    const coupon: Coupon = {
        ...simulatedCoupon(
            (burnt, count) => measured(depthOf(truth, burnt * Math.exp(dayOfCoupon), count)),
            // It has no square of nine tenths of the power.
            ladder.filter(([ratio]) => ratio < 0.9),
        ),
        burnt: { value: dateOf(0), where: nowhere },
    };
    const own = fitCoupon(coupon, shed);
    const rows: DatedRow[] = [];
    const runs: SimulatedRun[] = [];
    for (let at = 0; at < runsAYear; at++) {
        const day = Math.min(365, Math.max(1, Math.round(((at + 1) * 365) / runsAYear + 2 * roll())));
        const law =
            rule === 'by day'
                ? lawOfDay(coupon, shed, undefined, rows)
                : rule === 'all alike'
                  ? fitCoupon(
                        coupon,
                        shed,
                        undefined,
                        rows.map(({ row }) => row),
                    )
                  : own;
        const set = { power: 36, speed: Math.round(36 / (doseFor(law, target, passes) * pitch)), pitch, passes };
        const told = predict(law, set)!;
        const dug = depthOf(truth, dose(set.power, set.speed) * Math.exp(power(day) + DAY * roll()), passes);
        const depth = dug * (1 + offset);
        const read = measured(depth);
        const isTold = (mm: number): boolean => told.low <= mm && mm <= told.high;
        runs.push({ day, miss: depth / target - 1, held: isTold(depth), readHeld: isTold(read) });
        rows.push({ date: dateOf(day), row: { ...set, depth: read, tolerance: 0 } });
    }
    return { runs, rows, coupon };
}

/** Root of the mean square of the misses, of the runs of the days from one to another. */
export function rms(runs: readonly SimulatedRun[], from = 0, to = 366): number {
    const within = runs.filter(({ day }) => day >= from && day < to);
    return Math.sqrt(within.reduce((sum, { miss }) => sum + miss ** 2, 0) / within.length);
}

export function meanOf(values: readonly number[]): number {
    return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function dateOf(day: number): string {
    return new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10);
}

/** Means over some years: of the whole year, of its worst quarter, and the share of pockets within what was told. */
export function yearsOf(
    world: World,
    seeds: readonly number[],
    rule: Rule = 'by day',
): { year: number; worstQuarter: number; held: number; readHeld: number } {
    const years = seeds.map((seed) => simulateYear(world, seed, rule).runs);
    const share = (key: 'held' | 'readHeld') => meanOf(years.map((runs) => runs.filter((run) => run[key]).length / runs.length));
    const quarters = [0, 1, 2, 3].map((quarter) => meanOf(years.map((runs) => rms(runs, quarter * 91.5, (quarter + 1) * 91.5))));
    return {
        year: meanOf(years.map((runs) => rms(runs))),
        worstQuarter: Math.max(...quarters),
        held: share('held'),
        readHeld: share('readHeld'),
    };
}

/**
 * How soon a drift is told where somebody looks after each day of runs: the share of years in which it is within the first
 * `looks` of them and within all, and the middle one of the days after which it is first told.
 */
export function driftsOf(
    world: World,
    seeds: readonly number[],
    ways: Ways = {},
    looks = 20,
): { early: number; ever: number; middleDay: number } {
    const first = seeds.map((seed) => {
        const { rows, coupon } = simulateYear(world, seed, 'coupon only', ways);
        const law = fitCoupon(coupon, shed);
        const days = powerByDay(law, rows)?.days ?? [];
        const at = days.findIndex((_, index) => {
            const seen = rows.filter(({ date }) => date <= days[index]!.date);
            return driftOf(powerByDay(law, seen)?.days ?? []).told !== undefined;
        });
        return at < 0 ? undefined : { at, day: days[at]!.day - days[0]!.day };
    });
    const told = first.filter((each) => each !== undefined);
    const sorted = first.map((each) => each?.day ?? Number.POSITIVE_INFINITY).sort((a, b) => a - b);
    return {
        early: told.filter(({ at }) => at < looks).length / seeds.length,
        ever: told.length / seeds.length,
        middleDay: sorted[Math.floor(sorted.length / 2)]!,
    };
}
