import type { Plan } from '../../plan/plan';
import type { Mask, Step } from '../../recipe/step';
import { isMaskedAt } from './face-at';

/** The masking that lies on a blank just before a step; undefined where none does. */
export function maskOn(plan: Plan, { index }: Step, blank: string | undefined): Mask | undefined {
    if (blank === undefined || !isMaskedAt(plan, index, blank)) return undefined;
    const last = plan.steps.slice(0, index).findLast(({ step, blank: of }) => step.kind === 'mask' && of === blank)?.step;
    return last?.kind === 'mask' ? last : undefined;
}
