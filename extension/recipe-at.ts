import type { PlacedRecipe } from '../shared/view/protocol';

/** Name of the recipe whose text a place lies in; undefined between recipes. */
export function recipeAt(recipes: readonly PlacedRecipe[], place: number): string | undefined {
    return recipes.find(({ offset, length }) => offset <= place && place <= offset + length)?.name;
}
