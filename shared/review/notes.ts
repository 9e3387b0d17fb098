import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import { planBurns } from '../plan/plan-burns';
import { stepTitle } from '../plan/step-title';
import type { Allow } from '../recipe/allow';
import { type PinnedNote, pinnedSettings } from './pinned';

/** What a reviewer should see of a recipe even where no rule speaks. */
export interface ReviewNotes {
    readonly recipe: string;
    readonly allows: readonly AllowNote[];
    /** Titles of the laser steps whose settings are guessed, since nothing was burnt and measured for them. */
    readonly guesses: readonly string[];
    readonly pinned: readonly PinnedNote[];
}

export interface AllowNote {
    readonly rule: string;
    readonly reason: string;
    /** Index of the step it stands in; absent for the whole recipe. */
    readonly step?: number;
    readonly title?: string;
}

export function reviewNotes(plan: Plan, memo: Memo): ReviewNotes {
    return {
        recipe: plan.recipe.name,
        allows: allowNotes(plan),
        guesses: guesses(plan, memo),
        pinned: pinnedSettings(plan, memo),
    };
}

/** Every `allow … because`, those of the whole recipe first. */
export function allowNotes(plan: Plan): AllowNote[] {
    return allowsOf(plan).map(({ allow: { rule, reason }, ...rest }) => ({ rule, reason, ...rest }));
}

/** The same with the lines themselves. */
export function allowsOf(plan: Plan): { readonly allow: Allow; readonly step?: number; readonly title?: string }[] {
    const whole = plan.recipe.allows.map((allow) => ({ allow }));
    const inSteps = plan.steps.flatMap(({ step, title }) => step.allows.map((allow) => ({ allow, step: step.index, title })));
    return [...whole, ...inSteps];
}

/** Titles of the laser steps whose settings are guessed, whether or not their art can be drawn. */
export function guesses({ recipe }: Plan, memo: Memo): string[] {
    return planBurns(recipe, memo).burns.flatMap(({ settings, step }) => (settings?.guess === true ? [stepTitle(step)] : []));
}
