import type { Recipe } from '../recipe/recipe';
import type { Cut, Engrave } from '../recipe/step';
import { planBlank } from './blanks';
import type { Memo } from './memo';
import type { BlankPlan } from './plan';
import { type Solved, solveSettings } from './solve-settings';

/** What a recipe's steps burn with and how deep, whatever they draw. */
export interface BurnsPlan {
    readonly recipe: Recipe;
    readonly blanks: readonly BlankPlan[];
    /** The laser steps whose blank is known, in order. */
    readonly burns: readonly Burn[];
}

export interface Burn extends Solved {
    readonly step: Engrave | Cut;
    /** Name of the blank. */
    readonly blank: string;
}

/** The part of a plan that needs neither art nor geometry: settings and depths as `planLaser` has them. Costs the fits of the coupons. */
export function planBurns(recipe: Recipe, memo: Memo): BurnsPlan {
    const blanks = recipe.blanks.map(planBlank);
    const burns = recipe.steps.flatMap((step): Burn[] => {
        if (step.kind !== 'engrave' && step.kind !== 'cut') return [];
        const blank = blanks.find(({ name }) => name === step.blank.value);
        return blank === undefined ? [] : [{ step, blank: blank.name, ...solveSettings(step, blank, recipe, memo) }];
    });
    return { recipe, blanks, burns };
}
