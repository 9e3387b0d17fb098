import type { Plan } from '../../plan/plan';
import type { Change } from '../../recipe/finding';
import type { Peel, Step } from '../../recipe/step';
import { cureOf } from '../order/sand-before-cure';
import { elapsed, longEnough } from './elapsed';
import { timeText } from './longer-wait';
import { statementBefore } from './statement-before';

/**
 * Bares a veneer half before a step of its board, and lets the glue hold first where nobody has waited for it.
 * @param later where it is peeled now, which is too late
 */
export function peelFirst(plan: Plan, half: string, before: Step, later?: Peel): Change[] {
    const wait = waitForGlue(plan, half, before);
    if (later !== undefined && wait === '') return [{ do: 'move', statement: later.whole, before: before.whole }];
    return [
        statementBefore(before, `${wait}peel ${half}`),
        ...(later === undefined ? [] : [{ do: 'remove', where: later.whole } as const]),
    ];
}

function waitForGlue(plan: Plan, half: string, before: Step): string {
    const glued = plan.steps.find(({ inlay, step }) => inlay?.reliefLaser.blank === half && step.index < before.index)?.step;
    const needed = glued === undefined ? undefined : cureOf(plan, { step: glued.index })?.time;
    if (glued === undefined || needed === undefined) return '';
    const gone = elapsed(plan, glued.index, before.index);
    return longEnough(gone, needed) ? '' : `wait ${timeText(needed - gone)}\n  `;
}
