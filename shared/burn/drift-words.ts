import type { Interval } from '../quantity/interval';
import { showNumber, showRatio } from '../quantity/show';
import type { BoardRuns } from './board-runs';
import { MIN_DAYS, type ToldDrift } from './drift';
import type { Fresh } from './law-of-day';

/** What the runs on a board say of the power that the laser has left, without a full stop. */
export function powerWords({ start, drift, isMeasured }: Pick<BoardRuns, 'start' | 'drift' | 'isMeasured'>): string {
    const { days, level, told } = drift;
    const since = start === undefined ? '' : ` since ${eventWords(start)}`;
    if (days.length === 0) return `nothing has been measured${since}`;
    const often = `${dayCount(days.length)}${since}`;
    if (told !== undefined) return `${often}: ${driftWords(told)}`;
    // Without squares of its own a law is fitted to the runs themselves: that they agree with it says nothing.
    const mean = level ?? ratioAlone(days[0]!.logFactor);
    const where = isMeasured
        ? `, ${showRatio(mean.value)} of the coupon’s power${level === undefined ? '' : ` in the mean (${range(level)})`}`
        : '';
    return days.length < MIN_DAYS
        ? `${often}${where}: too few to tell a drift, ${MIN_DAYS} days are the least`
        : `${often}${where}; no drift`;
}

/** "−2.7 % (−3.5 to −1.9 %) of power a month since 2026-04-10, by 12 days of runs". */
export function driftWords({ since, days, perMonth, step }: ToldDrift): string {
    const by = `since ${since}, by ${dayCount(days)}`;
    if (perMonth !== undefined) return `${change(perMonth)} of power a month ${by}`;
    return step === undefined ? `another power ${by}` : `${change(step)} of power, at once, ${by}`;
}

/** "2026-01-10 (the coupon was burnt)". */
export function eventWords({ date, event }: Fresh): string {
    return `${date} (${events[event]})`;
}

const events: Readonly<Record<Fresh['event'], string>> = {
    burnt: 'the coupon was burnt',
    serviced: 'the laser was serviced',
    bought: 'the wood was bought',
};

function dayCount(days: number): string {
    return days === 1 ? 'one day of runs' : `${days} days of runs`;
}

function ratioAlone(logFactor: number): Interval {
    const value = Math.exp(logFactor);
    return { value, low: value, high: value };
}

function range({ low, high }: Interval): string {
    return `${showNumber(low * 100, 0)} to ${showNumber(high * 100, 0)} %`;
}

function change({ value, low, high }: Interval): string {
    return `${signed(value)} % (${signed(low)} to ${signed(high)} %)`;
}

function signed(ratio: number): string {
    const size = showNumber(Math.abs(ratio - 1) * 100, 1);
    return size === '0' ? '0' : `${ratio < 1 ? '−' : '+'}${size}`;
}
