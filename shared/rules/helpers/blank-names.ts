import type { BlankPlan, Plan, StepPlan } from '../../plan/plan';
import type { Wood } from '../../recipe/stock';

export function blankOf(plan: Plan, step: StepPlan): BlankPlan | undefined {
    return plan.blanks.find((blank) => blank.name === step.blank);
}

/** The wood of the blank of that name, as far as it is known. */
export function woodOf({ blanks }: Plan, blank: string | undefined): Wood | undefined {
    return blanks.find(({ name }) => name === blank)?.blank.sheet?.wood;
}

/** "walnut-12" or, without a sheet, the blank's own name. */
export function materialName(blank: BlankPlan): string {
    return blank.blank.sheet?.name ?? blank.name;
}
