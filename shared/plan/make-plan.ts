import type { Recipe } from '../recipe/recipe';
import { planBlank } from './blanks';
import { cautions } from './cautions';
import { planFrames } from './frames';
import type { Memo } from './memo';
import type { ArtState, Plan, StepPlan } from './plan';
import { layMarks } from './plan-marks';
import { planStep } from './plan-step';
import { sumTimes } from './step-times';
import { supplies } from './supplies';

/**
 * Works a recipe out. Pure but for `memo`, which only saves work: the plan is the same however it
 * was reached. Steps that cannot be planned say why and leave the others alone.
 */
export function makePlan(recipe: Recipe, arts: ReadonlyMap<string, ArtState>, memo: Memo): Plan {
    const blanks = recipe.blanks.map(planBlank);
    const steps: StepPlan[] = [];
    const bench = {
        recipe,
        arts,
        sources: new Map(recipe.arts.map((art) => [art.name, art])),
        blanks: new Map(blanks.map((blank) => [blank.name, blank])),
        done: steps,
        memo,
    };
    for (const step of recipe.steps) steps.push(planStep(step, bench));
    layMarks(steps, bench);
    return {
        version: 1,
        recipe,
        arts,
        blanks,
        steps,
        frames: planFrames(blanks, steps, memo),
        totals: sumTimes(steps.map((step) => step.times)),
        supplies: supplies(recipe, blanks, steps),
        cautions: cautions(recipe),
    };
}
