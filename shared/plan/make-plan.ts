import type { Recipe } from '../recipe/recipe';
import { planBlank } from './blanks';
import { cautions, withCautions } from './cautions';
import { planCuttings } from './cutting';
import { withAside } from './laid-aside';
import type { Memo } from './memo';
import type { ArtState, Plan, StepPlan } from './plan';
import { planBoards } from './plan-boards';
import { planCost } from './plan-cost';
import { layCutLines } from './plan-cut-lines';
import { workThrough } from './plan-faces';
import { layMarks } from './plan-marks';
import { planSchedule } from './plan-schedule';
import { planStep } from './plan-step';
import { withWood } from './plan-wood';
import { withRefocusing } from './refocused';
import { withAdvice } from './step-advice';
import { sumTimes } from './step-times';
import { supplies } from './supplies';
import { unknownTotals } from './unknown-totals';

/**
 * Works a recipe out. Pure but for `memo`, which only saves work: the plan is the same however it
 * was reached. Steps that cannot be planned say why and leave the others alone.
 */
export function makePlan(recipe: Recipe, arts: ReadonlyMap<string, ArtState>, memo: Memo): Plan {
    const blanks = recipe.blanks.map(planBlank);
    const drawn: StepPlan[] = [];
    const bench = {
        recipe,
        arts,
        sources: new Map(recipe.arts.map((art) => [art.name, art])),
        blanks: new Map(blanks.map((blank) => [blank.name, blank])),
        done: drawn,
        memo,
    };
    for (const step of recipe.steps) drawn.push(planStep(step, bench));
    layCutLines(drawn, bench);
    layMarks(drawn, bench);
    const worked = workThrough(recipe, blanks, drawn, memo);
    const { faces } = worked;
    const steps = withAside({ recipe, blanks, steps: withRefocusing({ recipe, blanks, steps: worked.steps }, memo) }, memo);
    const cuttings = planCuttings(recipe, blanks, memo);
    const used = supplies(recipe, blanks, steps, cuttings, faces);
    const laid = planSchedule(recipe, blanks, steps, faces, memo);
    const unknown = unknownTotals(recipe, steps);
    const cost = unknown === undefined ? planCost(recipe.shop, recipe.make, laid, used) : undefined;
    return {
        version: 1,
        recipe,
        arts,
        blanks,
        steps: withAdvice(withCautions(withWood(steps, blanks), recipe), recipe, faces),
        faces,
        ...(unknown === undefined ? { totals: sumTimes(steps.map((step) => step.times)) } : { unknown }),
        supplies: used,
        schedule: laid,
        cuttings,
        ...(cost === undefined ? {} : { cost }),
        cautions: cautions(recipe, steps),
        boards: planBoards(recipe, memo),
    };
}
