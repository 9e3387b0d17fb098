import { isInserted, type Recipe, type RecipeItem } from '../generated/ast';

/** What a recipe itself writes, with the steps that a variant puts between those of its base. */
export function membersOf(recipe: Recipe): RecipeItem[] {
    return recipe.items.flatMap((item): readonly RecipeItem[] => (isInserted(item) ? item.items : [item]));
}
