import { type Drift, leastDays } from '../burn/drift';
import { showNumber, showRatio } from '../quantity/show';
import type { CouponDrift } from './coupon-drift';
import type { PlannedBy, RunDrift } from './run-history';

/** What a drift comes to in a sentence; `over` is what depths are measured against. */
export function driftWords({ days, level, slope, told }: Drift, over: string): string {
    if (days.length === 0) return 'no measured depth to tell by';
    const often = days.length === 1 ? 'one day' : `${days.length} days`;
    const where =
        level === undefined
            ? `${showRatio(days[0]!.ratio)} of ${over}`
            : `${showRatio(level.value)} of ${over} in the mean (${range(level.low, level.high)})`;
    if (slope === undefined) return `${often}, ${where}: too few to tell a drift, ${leastDays} days are the least`;
    const bounds = `${signed(slope.low)} to ${signed(slope.high)}`;
    return told
        ? `${often}, ${where}; ${slope.value > 0 ? 'deeper' : 'shallower'} by ${showRatio(Math.abs(slope.value))} a month (${bounds})`
        : `${often}, ${where}; no drift can be told: ${signed(slope.value)} a month, but anything from ${bounds} would fit`;
}

export function runDriftWords({ drift, leftOut }: RunDrift): string {
    const without = leftOut === 0 ? '' : `; ${leftOut} left out, the plan they followed is not known`;
    return `${driftWords(drift, 'plan')}${without}`;
}

export function couponDriftWords({ burnt, drift, later, since }: CouponDrift): string {
    if (burnt === undefined) return 'the coupon does not say when it was burnt, so nothing can be said';
    const events = since.length === 0 ? '' : `; since then ${since.join(' and ')}`;
    if (later === 0) return `nothing has been measured since ${burnt}${events}`;
    return `${driftWords(drift, 'what the coupon foretells')}${events}`;
}

export function plannedWords({ by, revision, commit }: PlannedBy): string {
    if (by === 'the present plan') return `held against the present plan (issue ${revision})`;
    return `held against the plan of its issue${commit === undefined ? '' : ` (${commit})`}`;
}

function range(low: number, high: number): string {
    return `${showNumber(Math.max(0, low) * 100, 0)} to ${showNumber(high * 100, 0)} %`;
}

function signed(ratio: number): string {
    const size = showNumber(Math.abs(ratio) * 100, 1);
    return size === '0' ? '0 %' : `${ratio < 0 ? '−' : '+'}${size} %`;
}
