import type { Recipe } from '../recipe/recipe';
import type { Step } from '../recipe/step';
import { keptFor } from './kept';
import { Memo } from './memo';
import type { BlankPlan, Plan, StepPlan } from './plan';
import { workThrough } from './plan-faces';
import { hollowOf, planFill } from './plan-fill';
import { stackAndFit } from './plan-inlay';
import { laserFigures } from './plan-laser';
import { sandedBelow, sandOf } from './plan-step';
import { fillTimes, stepTimes } from './step-times';
import { halfAsBurnt } from './veneer-half';

/**
 * A plan with other figures in some of its steps, for trying out what a number would do: settings, depths, stacks, fits, layers
 * and pieces are worked out again, while everything drawn stays where it is. Costs no geometry that the plan has not had; edges
 * that would move with a depth are left where they are.
 * @param changed steps in place of those of the same index
 */
export function rehearse(plan: Plan, changed: readonly Step[]): Plan {
    const memo = keptFor(plan.steps, 'rehearsal', () => new Memo(512));
    const steps = plan.recipe.steps.map((step) => changed.find(({ index }) => index === step.index) ?? step);
    const recipe: Recipe = { ...plan.recipe, steps };
    const blanks = new Map(plan.blanks.map((blank) => [blank.name, blank]));
    const done: StepPlan[] = [];
    for (const old of plan.steps) {
        const step = steps[old.step.index];
        done.push(step === undefined ? old : again(old, step, { recipe, blanks, done, memo }));
    }
    return { ...plan, recipe, ...workThrough(recipe, plan.blanks, done, memo) };
}

interface Rehearsal {
    readonly recipe: Recipe;
    readonly blanks: ReadonlyMap<string, BlankPlan>;
    readonly done: readonly StepPlan[];
    readonly memo: Memo;
}

function again(old: StepPlan, step: Step, { recipe, blanks, done, memo }: Rehearsal): StepPlan {
    const { laser, fill, inlay } = old;
    if ((step.kind === 'engrave' || step.kind === 'cut') && laser !== undefined) {
        const blank = blanks.get(laser.blank);
        // What no figure of its own was changed in stays as it is.
        return step === old.step || blank === undefined
            ? old
            : { ...old, step, laser: laserFigures(laser, step, recipe, { blank, memo }) };
    }
    if (step.kind === 'fill' && fill !== undefined) {
        const pocket = done[fill.pocket.index]?.laser;
        const depth = pocket?.depth;
        if (pocket?.step.kind !== 'engrave' || depth === undefined) return old;
        const made = planFill(step, pocket.step, hollowOf({ ...pocket, depth }), recipe);
        return { ...old, step, fill: made, times: fillTimes(made) };
    }
    if (step.kind === 'inlay' && inlay !== undefined) {
        const relief = done[inlay.relief.index]?.laser;
        const pocket = done[inlay.pocket.index]?.laser;
        if (relief === undefined || pocket === undefined) return old;
        const half = halfAsBurnt(relief, blanks.get(relief.blank)?.thickness);
        const halves = { relief, pocket, half, below: sandedBelow(step, pocket, recipe), memo };
        const { stack: _stack, fit: _fit, fitIfWide: _wide, ...drawn } = inlay;
        const figures = stackAndFit(step, halves);
        return {
            ...old,
            step,
            inlay: {
                ...drawn,
                ...figures,
                relief: relief.step,
                pocket: pocket.step,
                reliefLaser: relief,
                pocketLaser: pocket,
            },
        };
    }
    if (step.kind === 'sand' && old.sand !== undefined) return { ...old, step, sand: sandOf(step) };
    return step === old.step ? old : { ...old, step, times: stepTimes(step, old.times.machine) };
}
