import { spotOf } from '../burn/beam';
import { doseOf, sigmaOf } from '../burn/dose';
import type { LinePasses } from '../burn/outline-pass';
import { type Wall, wallOf } from '../burn/wall';
import { type Region, tangledRegion } from '../geometry/region';
import type { Recipe } from '../recipe/recipe';
import type { Cut, Engrave } from '../recipe/step';
import { depthLaw } from './depth-law';
import type { OutlineSettings } from './laser-plan';
import type { PlacingTable } from './place-art';
import { outlineSettings } from './plan-outline';
import type { Solved } from './solve-settings';

/** The walls that a step's beam makes; undefined for what does not dig, and while settings or spot are not known. */
export function wallOfStep(
    { settings, tone, goesOn }: Solved,
    recipe: Recipe,
    { blank, memo, line }: Pick<PlacingTable, 'blank' | 'memo'> & { readonly line: LinePasses | undefined },
): Wall | undefined {
    const spot = spotOf(recipe.laser);
    if (goesOn !== undefined && spot !== undefined) {
        const { law, dose, passes } = goesOn.whole;
        return wallOf(law, dose, sigmaOf(spot.diameter), passes, line);
    }
    if (settings === undefined || spot === undefined || tone !== undefined) return undefined;
    return wallOf(depthLaw(recipe, blank.blank.sheet, memo), doseOf(settings), sigmaOf(spot.diameter), settings.passes, line);
}

/** The settings of its outline passes; undefined where it has none. */
export function outlineOfStep(
    step: Engrave | Cut,
    { settings, tone, goesOn }: Solved,
    drawn: Region,
    recipe: Recipe,
    { blank, memo }: Pick<PlacingTable, 'blank' | 'memo'>,
): OutlineSettings | undefined {
    const passes = step.kind === 'engrave' ? (step.outline?.value ?? 0) : 0;
    if (settings === undefined || !(passes > 0) || drawn === tangledRegion || drawn.rings.length === 0) return undefined;
    const law = depthLaw(recipe, blank.blank.sheet, memo);
    if (goesOn !== undefined) {
        const { whole } = goesOn;
        const all = { ...settings, power: whole.dose * settings.speed * settings.pitch, passes: whole.passes };
        const asked = { passes, settings: all, isTone: false, law: { ...law, ...whole.law }, laser: recipe.laser, drawn };
        return outlineSettings(asked, memo);
    }
    return outlineSettings({ passes, settings, isTone: tone !== undefined, law, laser: recipe.laser, drawn }, memo);
}
