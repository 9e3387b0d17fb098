import type { Plan } from '../plan/plan';

/** What a reviewer should see of a recipe even where no rule speaks. */
export interface ReviewNotes {
    readonly recipe: string;
    readonly allows: readonly AllowNote[];
    /** Titles of the laser steps whose settings are guessed, since nothing was burnt and measured for them. */
    readonly guesses: readonly string[];
}

export interface AllowNote {
    readonly rule: string;
    readonly reason: string;
    /** Index of the step it stands in; absent for the whole recipe. */
    readonly step?: number;
    readonly title?: string;
}

export function reviewNotes(plan: Plan): ReviewNotes {
    return { recipe: plan.recipe.name, allows: allowNotes(plan), guesses: guesses(plan) };
}

/** Every `allow … because`, those of the whole recipe first. */
export function allowNotes(plan: Plan): AllowNote[] {
    const whole = plan.recipe.allows.map(({ rule, reason }) => ({ rule, reason }));
    const inSteps = plan.steps.flatMap(({ step, title }) =>
        step.allows.map(({ rule, reason }) => ({ rule, reason, step: step.index, title })),
    );
    return [...whole, ...inSteps];
}

export function guesses(plan: Plan): string[] {
    return plan.steps.flatMap(({ laser, title }) => (laser?.settings?.guess === true ? [title] : []));
}
