import type { Hatch } from './hatch';
import { type AreaWork, overtravelOf } from './job';
import { type Motion, moveTime, runUp } from './motion';

/** One run of the head along a scan line, from run-up to run-out, over segments `from` up to, without, `to`. */
export interface Sweep {
    readonly line: number;
    readonly from: number;
    readonly to: number;
    /** Whether it runs against u. */
    readonly backwards: boolean;
}

/**
 * Visits the sweeps of one pass in the order in which they are run. A line is left and taken up again
 * where the gap between two segments is so wide that stopping, travelling fast and running up again saves time.
 */
export function eachSweep(work: AreaWork, motion: Motion, visit: (sweep: Sweep) => void): void {
    const { hatch } = work;
    const widest = widestGap(work, motion);
    let backwards = false;
    const breaks: number[] = [];
    for (let line = 0; line < hatch.lines; line++) {
        const first = hatch.starts[line]!;
        const end = hatch.starts[line + 1]!;
        if (first === end) continue;
        findBreaks(hatch, first, end, widest, breaks);
        const stretches = breaks.length + 1;
        for (let k = 0; k < stretches; k++) {
            const at = backwards ? stretches - 1 - k : k;
            visit({ line, from: at === 0 ? first : breaks[at - 1]!, to: at === stretches - 1 ? end : breaks[at]!, backwards });
        }
        if (work.bothWays) backwards = !backwards;
    }
}

/** Puts into `breaks` the segments of a line before which the gap is wider than `widest`. */
function findBreaks({ ends }: Hatch, first: number, end: number, widest: number, breaks: number[]): void {
    breaks.length = 0;
    for (let i = first + 1; i < end; i++) if (ends[2 * i]! - ends[2 * i - 1]! > widest) breaks.push(i);
}

/** Where a sweep starts and ends along u, run-up and run-out included. */
export function sweepEnds(hatch: Hatch, sweep: Sweep, overtravel: number): { start: number; end: number } {
    const low = hatch.ends[2 * sweep.from]! - overtravel;
    const high = hatch.ends[2 * sweep.to - 1]! + overtravel;
    return sweep.backwards ? { start: high, end: low } : { start: low, end: high };
}

/** The gap (mm) from which on it is quicker to stop and travel than to scan on. */
function widestGap(work: AreaWork, motion: Motion): number {
    const over = overtravelOf(work, motion);
    const { speed } = work;
    const saved = (gap: number): number =>
        gap / speed -
        moveTime(gap - 2 * over, motion.topSpeed, motion.acceleration) -
        2 * rampTime(over, speed, motion.acceleration);
    let low = 2 * over;
    let high = 1e7;
    if (!(saved(high) > 0)) return Number.POSITIVE_INFINITY;
    for (let i = 0; i < 60 && high - low > 1e-6 * high; i++) {
        const middle = (low + high) / 2;
        if (saved(middle) > 0) high = middle;
        else low = middle;
    }
    return high;
}

/** Time (s) from rest over a run-up of `over` mm towards a speed. */
function rampTime(over: number, speed: number, acceleration: number): number {
    const needed = runUp(speed, acceleration);
    return over < needed ? Math.sqrt((2 * over) / acceleration) : speed / acceleration + (over - needed) / speed;
}
