import type { Recipe } from '../recipe/recipe';
import type { StepPlan } from './plan';

/**
 * Why nothing can be said of all steps together, in a maker's words; undefined where everything is worked out. A sum without
 * what is missing would look like a small one.
 */
export function unknownTotals(recipe: Recipe, steps: readonly StepPlan[]): string | undefined {
    if (recipe.incomplete !== undefined) return 'a line of the recipe cannot be read';
    for (const { title, unplanned, laser } of steps) {
        if (unplanned !== undefined) return `${title}: ${unplanned}`;
        if (laser !== undefined && laser.settings === undefined) return `${title}: its settings are not known`;
    }
    return undefined;
}
