import { stepKey } from '../plan/step-key';
import type { Step } from '../recipe/step';
import { matchSteps } from './match-steps';

/** The same step in several recipes: its index in each, absent where a recipe has no such step. */
export type StepRow = readonly (number | undefined)[];

/**
 * Lines the steps of several recipes up: those of the first in their order, and what only others have
 * behind the step that it follows there.
 */
export function alignSteps(recipes: readonly (readonly Step[])[]): StepRow[] {
    const [first = [], ...others] = recipes;
    const rows: (number | undefined)[][] = first.map((_, index) => [index]);
    // Rows move while others are put in, so the first recipe's are known by themselves and not by their place.
    const ofFirst = [...rows];
    for (const [at, steps] of others.entries()) {
        const column = at + 1;
        let last = -1;
        for (const { before, after } of matchSteps(first, steps).toSorted(byAfter)) {
            if (after === undefined) continue;
            const same = (row: readonly (number | undefined)[]): boolean =>
                row[column] === undefined && row[0] === undefined && keyOf(row, recipes) === stepKey(steps[after]!);
            let row = before === undefined ? rows.find(same) : ofFirst[before];
            if (row === undefined) {
                row = [];
                rows.splice(last + 1, 0, row);
            }
            row[column] = after;
            last = rows.indexOf(row);
        }
    }
    return rows.map((row) => recipes.map((_, column) => row[column]));
}

function byAfter(a: { readonly after?: number }, b: { readonly after?: number }): number {
    return (a.after ?? -1) - (b.after ?? -1);
}

function keyOf(row: readonly (number | undefined)[], recipes: readonly (readonly Step[])[]): string | undefined {
    const column = row.findIndex((index) => index !== undefined);
    const step = recipes[column]?.[row[column] ?? -1];
    return step === undefined ? undefined : stepKey(step);
}
