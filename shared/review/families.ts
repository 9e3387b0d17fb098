import type { Where } from '../quantity/where';
import type { Recipe } from '../recipe/recipe';

/** Recipes that stand on one another, the one below all of them first; recipes without kin are left out. */
export function familiesOf(recipes: readonly Recipe[]): Recipe[][] {
    const families = new Map<string, Recipe[]>();
    for (const recipe of recipes) {
        const root = place(recipe.base?.wholes.at(-1) ?? recipe.whole);
        families.set(root, [...(families.get(root) ?? []), recipe]);
    }
    return [...families.values()].filter((family) => family.length > 1).map((family) => family.toSorted(byDepth));
}

/** The recipe of a name with all that is based on it, near or far; without kin it stands alone. */
export function familyOf(base: string, recipes: readonly Recipe[]): Recipe[] {
    const below = new Set(recipes.filter(({ name }) => name === base).map(({ whole }) => place(whole)));
    const kin = recipes.filter(
        ({ whole, base: on }) => below.has(place(whole)) || on?.wholes.some((each) => below.has(place(each))),
    );
    return kin.toSorted(byDepth);
}

function byDepth(a: Recipe, b: Recipe): number {
    return (a.base?.wholes.length ?? 0) - (b.base?.wholes.length ?? 0);
}

function place({ uri, offset }: Where): string {
    return `${uri}#${offset}`;
}
