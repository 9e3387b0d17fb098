import type { Times } from '../plan/plan';
import type { Recipe } from '../recipe/recipe';
import { type Figure, word, worked } from './figure';

/** What is written of a recipe as a whole. */
export function recipeFigures(recipe: Recipe): Figure[] {
    return [
        word('name', recipe.name),
        word('title', recipe.title),
        worked('revision', recipe.revision, 'count'),
        worked('make', recipe.make, 'count'),
        ...(recipe.laser === undefined ? [] : [word('laser', recipe.laser.name)]),
    ];
}

/** How long one piece takes. */
export function timeFigures({ machine, attended, waiting }: Times): Figure[] {
    return [worked('machine', machine, 'time'), worked('hands', attended, 'time'), worked('waiting', waiting, 'time')];
}
