import { spotOf } from '../burn/beam';
import { type DeepLean, deepLean } from '../burn/deep-wall';
import { doseOf, type LawNumbers, sigmaOf } from '../burn/dose';
import type { LinePasses } from '../burn/outline-pass';
import { DEEP, type Wall, wallInset, wallOf } from '../burn/wall';
import { type Region, tangledRegion } from '../geometry/region';
import type { Recipe } from '../recipe/recipe';
import type { Cut, Engrave } from '../recipe/step';
import { depthLaw } from './depth-law';
import type { DeepWall, LaserPlan, OutlineSettings } from './laser-plan';
import type { PlacingTable } from './place-art';
import { outlineSettings } from './plan-outline';
import type { Solved } from './solve-settings';

/** The walls that a step's beam makes; undefined for what does not dig, and while settings or spot are not known. */
export function wallOfStep(
    { settings, tone, goesOn }: Solved,
    recipe: Recipe,
    { blank, memo, line }: Pick<PlacingTable, 'blank' | 'memo'> & { readonly line: LinePasses | undefined },
): StepWall | undefined {
    const spot = spotOf(recipe.laser);
    if (spot === undefined) return undefined;
    const sigma = sigmaOf(spot.diameter);
    const { sheet } = blank.blank;
    const of = (law: LawNumbers, dose: number, passes: number): StepWall | undefined => {
        const beams = wallOf(law, dose, sigma, passes, line);
        if (beams === undefined || !(beams.depth > DEEP)) return beams;
        const pockets = recipe.measured.filter((pocket) => pocket.sheet === sheet?.name && pocket.wall !== undefined);
        const leans = deepLean(pockets, depthLaw(recipe, sheet, memo), sigma);
        const wall = wallOf(law, dose, sigma, passes, line, leans.lean.value);
        return wall === undefined ? undefined : { ...wall, deepWall: deepWallOf(wall, leans) };
    };
    if (goesOn !== undefined) return of(goesOn.whole.law, goesOn.whole.dose, goesOn.whole.passes);
    if (settings === undefined || tone !== undefined) return undefined;
    return of(depthLaw(recipe, sheet, memo), doseOf(settings), settings.passes);
}

/** A wall, and what is known of it where it goes deeper than the beam's width tells. */
export interface StepWall extends Wall {
    readonly deepWall?: DeepWall;
}

function deepWallOf({ depth, profile }: Wall, { lean, walls }: DeepLean): DeepWall {
    const widthAt = (deep: number): number => wallInset({ ...profile, deep }, depth);
    return { lean, width: { value: widthAt(lean.value), low: widthAt(lean.low), high: widthAt(lean.high) }, walls };
}

/** The walls of a step as the plan keeps them. */
export function wallParts(wall: StepWall | undefined): Pick<LaserPlan, 'wall' | 'finest' | 'deepWall'> {
    if (wall === undefined) return {};
    const { profile, slot, rib, deepWall } = wall;
    return { wall: profile, finest: { slot, rib }, ...(deepWall === undefined ? {} : { deepWall }) };
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
