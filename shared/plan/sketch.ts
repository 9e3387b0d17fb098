import { emptyRegion } from '../geometry/region';
import type { Recipe } from '../recipe/recipe';
import type { Memo } from './memo';
import type { Plan, StepPlan } from './plan';
import { planBoards } from './plan-boards';
import { planBurns } from './plan-burns';
import { stepTitle } from './step-title';

/**
 * A plan in which nothing is drawn: settings, depths and what runs say of the boards, without art, pieces, times and amounts.
 * For what goes by figures alone, and for setting two recipes beside each other that draw the same. Costs the fits of the coupons.
 */
export function sketchPlan(recipe: Recipe, memo: Memo): Plan {
    const { blanks, burns } = planBurns(recipe, memo);
    const steps = recipe.steps.map((step): StepPlan => {
        const burn = burns.find((each) => each.step === step);
        const base = { step, title: stepTitle(step), times: { machine: 0, attended: 0, waiting: 0 } };
        return burn === undefined ? base : { ...base, blank: burn.blank, laser: { ...undrawn, ...burn } };
    });
    return {
        version: 1,
        recipe,
        arts: new Map(),
        blanks,
        steps,
        faces: [],
        unknown: 'nothing is drawn',
        supplies: [],
        schedule: { turns: [], works: [], spans: [], sittings: [], ready: 0, attended: 0, machine: 0, idle: 0, scaled: false },
        cuttings: [],
        cautions: [],
        boards: planBoards(recipe, memo),
    };
}

const undrawn = {
    region: emptyRegion,
    area: 0,
    perimeter: 0,
    placed: [],
    scanAngle: 0,
    outlinePasses: 0,
    taper: 0,
    growth: 0,
    edge: 0,
    machine: 0,
    fileLines: 0,
};
