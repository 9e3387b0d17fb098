import type { Recipe } from '../recipe/recipe';

/** A recipe with nothing in it, to compare one with that the other side has not. */
export function emptyRecipe(name: string): Recipe {
    const where = { uri: '', offset: 0, length: 0 };
    return {
        name,
        title: '',
        where,
        whole: where,
        revision: 0,
        make: 0,
        arts: [],
        blanks: [],
        steps: [],
        allows: [],
        coupons: [],
        runs: [],
        measured: [],
    };
}
