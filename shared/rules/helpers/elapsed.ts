import type { Plan } from '../../plan/plan';
import { timeBetween } from '../../plan/time-between';

/** Time that passes for a piece between the end of one step and the start of a later one, s. */
export function elapsed(plan: Plan, from: number, to: number): number {
    return timeBetween(plan.steps, from, to);
}

/** The most that may pass: waits that are written as a range last to their longer end, s. */
export function elapsedAtMost(plan: Plan, from: number, to: number): number {
    let sum = elapsed(plan, from, to);
    for (const { step } of plan.steps) {
        if (step.kind !== 'wait' || step.longest === undefined || step.index <= from || step.index >= to) continue;
        sum += step.longest.value - step.time.value;
    }
    return sum;
}

/** A wait that falls short by less than this part of what is wanted is as good as kept. */
const asGood = 0.95;

export function longEnough(time: number, wanted: number): boolean {
    return time >= wanted * asGood;
}
