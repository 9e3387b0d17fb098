import type { BlankPlan, Plan, StepPlan } from '../../plan/plan';

export function blankOf(plan: Plan, step: StepPlan): BlankPlan | undefined {
    return plan.blanks.find((blank) => blank.name === step.blank);
}

/** "walnut-12" or, without a sheet, the blank's own name. */
export function materialName(blank: BlankPlan): string {
    return blank.blank.sheet?.name ?? blank.name;
}
