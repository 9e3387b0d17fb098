import type { Recipe } from '../recipe/recipe';
import type { BurntStep, Run } from '../recipe/run';
import type { Step } from '../recipe/step';
import type { Sheet } from '../recipe/stock';
import { spotOf } from './beam';
import { pitchForSpot } from './pitch';
import { wattsOf } from './power-curve';
import type { BurnRow } from './rows';

/**
 * The measured squares (base units) that a recipe's runs add to the fit of its laser on a sheet. A line
 * counts if it says what it was burnt with and how deep it came out. In what and on what is read from the
 * recipe only for a run of the revision that stands there now: an older one may have been burnt elsewhere.
 */
export function runRows(recipe: Recipe, sheet: Sheet | undefined): BurnRow[] {
    return datedRunRows(recipe, sheet).map(({ row }) => row);
}

/** The same with the day of each, ISO 8601. */
export function datedRunRows(recipe: Recipe, sheet: Sheet | undefined): { readonly date: string; readonly row: BurnRow }[] {
    return recipe.runs.flatMap((run) =>
        run.burnt.flatMap((burnt) => {
            const row = rowOf(burnt, run, recipe, sheet);
            return row === undefined ? [] : [{ date: run.date.value, row }];
        }),
    );
}

function rowOf(burnt: BurntStep, run: Run, recipe: Recipe, sheet: Sheet | undefined): BurnRow | undefined {
    const isNow = run.revision === undefined || run.revision === recipe.revision;
    const named = recipe.steps.find((each) => isNamed(each, burnt.step.value));
    if (named?.kind === 'cut') return undefined; // a single line, which no square of a coupon is like
    if (isTone(named)) return undefined; // darkened without digging: its depth is no point of the law
    const step = isNow ? named : undefined;
    const laser = run.laser ?? (isNow ? recipe.laser : undefined);
    const burntIn = burnt.sheet ?? sheetOf(step, recipe);
    const { power, speed, depth, passes } = burnt;
    if (sheet === undefined || burntIn !== sheet.name || laser === undefined || laser.name !== recipe.laser?.name)
        return undefined;
    if (power === undefined || speed === undefined || depth === undefined) return undefined;
    const pitch = burnt.pitch?.value ?? pitchNow(step, recipe, sheet);
    return {
        power: wattsOf(power, laser) ?? Number.NaN,
        speed: speed.value,
        pitch: pitch ?? Number.NaN,
        passes,
        depth: depth.value,
        tolerance: depth.tolerance,
        where: burnt.where,
    };
}

function isNamed(step: Step, name: string | undefined): boolean {
    return name !== undefined && (step.kind === 'engrave' || step.kind === 'cut') && step.name === name;
}

function sheetOf(step: Step | undefined, { blanks }: Recipe): string | undefined {
    const blank = step !== undefined && 'blank' in step ? step.blank.value : undefined;
    return blanks.find(({ name }) => name === blank)?.sheet?.name;
}

/** The pitch that a step without one is burnt with: its own, the coupon's, or the one that fits the spot. */
function pitchNow(step: Step | undefined, recipe: Recipe, sheet: Sheet): number | undefined {
    const own = step?.kind === 'engrave' ? step.pitch?.value : undefined;
    const coupon = recipe.coupons.find((each) => each.sheet === sheet.name && each.laser === recipe.laser?.name);
    return own ?? coupon?.pitch?.value ?? pitchForSpot(spotOf(recipe.laser));
}

function isTone(step: Step | undefined): boolean {
    return step?.kind === 'engrave' && step.tone !== undefined && step.depth === undefined;
}
