import { type Schedule, schedule, type Turn, type Work } from '../bench/schedule';
import type { Plan, StepPlan } from './plan';
import { handTime } from './step-times';

/** When each step is done for all the pieces, and when they are ready. Times in s from the start. */
export interface PlanSchedule extends Schedule {
    readonly spans: readonly StepSpan[];
}

/** One step over all pieces that were laid out. */
export interface StepSpan {
    readonly step: number;
    readonly start: number;
    /** When the last piece leaves the hands. */
    readonly end: number;
    /** When the last piece may go on. */
    readonly ready: number;
}

/**
 * Lays the recipe's steps out for all the pieces it makes: one pair of hands, one laser, and waits
 * that run side by side. Worked out when somebody asks, since a long run takes some milliseconds.
 *
 * @param workday hours in which hands can work, in s from the start of each day; absent: day and night
 */
export function planSchedule(plan: Plan, workday?: number): PlanSchedule {
    const laid = schedule(worksOf(plan), plan.recipe.make, workday);
    return { ...laid, spans: plan.steps.map((_, step) => spanOf(laid.turns, step)) };
}

function spanOf(turns: readonly Turn[], step: number): StepSpan {
    let start = Number.POSITIVE_INFINITY;
    let end = 0;
    let ready = 0;
    for (const turn of turns) {
        if (turn.work !== step) continue;
        start = Math.min(start, turn.start);
        end = Math.max(end, turn.end);
        ready = Math.max(ready, turn.ready);
    }
    return { step, start: Number.isFinite(start) ? start : 0, end, ready };
}

/**
 * A step follows the last one that had one of its blanks in hand. A wait belongs to what was done
 * just before it, so that work on another blank may go on meanwhile; free text may mean anything
 * and keeps its place among all blanks.
 */
function worksOf(plan: Plan): Work[] {
    const everything = plan.blanks.map((blank) => blank.name);
    const last = new Map<string, number>();
    let before: readonly string[] = everything;
    return plan.steps.map((stepPlan, index) => {
        const { step, times } = stepPlan;
        const blanks = step.kind === 'wait' ? before : (blanksOf(plan, stepPlan) ?? everything);
        const after = [...new Set(blanks.flatMap((name) => last.get(name) ?? []))];
        for (const name of blanks) last.set(name, index);
        before = blanks;
        return { ...handTime(step), machine: times.machine, wait: times.waiting, after };
    });
}

/** The blanks that a step has in hand; undefined where that is not known. */
function blanksOf(plan: Plan, { step, blank, inlay }: StepPlan): readonly string[] | undefined {
    if (blank === undefined) return undefined;
    const held = inlay === undefined ? [blank] : [blank, inlay.reliefLaser.blank];
    // What lies glued in another blank is in hand together with it.
    const frame = plan.frames[step.index] ?? [];
    const glued = frame.filter((piece) => piece.inside !== undefined && held.includes(piece.inside)).map((piece) => piece.blank);
    const holders = frame.filter((piece) => held.includes(piece.blank)).flatMap((piece) => piece.inside ?? []);
    return [...new Set([...held, ...glued, ...holders])];
}
