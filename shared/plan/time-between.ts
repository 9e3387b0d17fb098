import type { StepPlan } from './plan';

/** Time that passes for a piece between the end of one step and the start of a later one, by their indices, s. */
export function timeBetween(steps: readonly StepPlan[], from: number, to: number): number {
    let sum = 0;
    for (const { step, times } of steps) {
        if (step.index > from && step.index < to) sum += times.machine + times.attended + times.waiting;
    }
    return sum;
}
