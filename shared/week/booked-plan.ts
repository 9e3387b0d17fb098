import type { Plan, StepPlan } from '../plan/plan';

/**
 * What a week and a season look at of a plan: plain figures and no drawing, so that each recipe can be worked out on whatever core is free
 * and passes between threads at no cost.
 */
export interface BookedPlan extends Pick<Plan, 'recipe' | 'blanks' | 'supplies' | 'schedule' | 'cost' | 'unknown'> {
    readonly steps: readonly Pick<StepPlan, 'step' | 'title'>[];
}

export function bookedPlan({ recipe, blanks, steps, supplies, schedule, cost, unknown }: Plan): BookedPlan {
    return {
        recipe,
        blanks,
        steps: steps.map(({ step, title }) => ({ step, title })),
        supplies,
        schedule,
        ...(cost === undefined ? {} : { cost }),
        ...(unknown === undefined ? {} : { unknown }),
    };
}
