import type { Recipe } from '../recipe/recipe';

/**
 * Whether two versions of a recipe are worked out alike, given the same art: they say the same but for places, comments and
 * what no plan goes by. Of the runs a plan goes by what they measured, and that is told apart. O(n) of the recipe's data.
 */
export function isWorkedAlike(before: Recipe, after: Recipe): boolean {
    return isSame(plannedBy(before), plannedBy(after));
}

function plannedBy({ title: _title, revision: _revision, runs: _runs, ...rest }: Recipe): object {
    return rest;
}

function isSame(a: unknown, b: unknown): boolean {
    if (Object.is(a, b)) return true;
    if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
    if (Array.isArray(a) !== Array.isArray(b)) return false;
    if (isPlace(a) && isPlace(b)) return true;
    const old = Object.entries(a).filter(isRead);
    const now = new Map(Object.entries(b).filter(isRead));
    return old.length === now.size && old.every(([key, value]) => now.has(key) && isSame(value, now.get(key)));
}

function isRead([key, value]: [string, unknown]): boolean {
    return key !== 'about' && key !== 'wholes' && value !== undefined;
}

function isPlace(thing: object): boolean {
    return 'uri' in thing && 'offset' in thing && 'length' in thing;
}
