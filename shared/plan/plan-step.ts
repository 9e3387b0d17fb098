import { sandingSequence } from '../bench/sanding-sequence';
import { firstLie, isSameLie, sideOf } from '../piece/lie';
import { atLeast, exactly, type Interval, intervalOf } from '../quantity/interval';
import type { ArtSource, Recipe } from '../recipe/recipe';
import type { Cut, Engrave, Inlay, Sand, Step } from '../recipe/step';
import type { LaserPlan } from './laser-plan';
import { lieBefore } from './lies';
import type { Memo } from './memo';
import type { ArtState, BlankPlan, SandPlan, StepPlan } from './plan';
import { hollowOf, planFill } from './plan-fill';
import { planInlay } from './plan-inlay';
import { planLaser } from './plan-laser';
import { fillTimes, stepTimes } from './step-times';
import { stepTitle } from './step-title';
import { halfAsBurnt } from './veneer-half';

/** What one step is worked out with: the recipe's things, and the steps before it. */
export interface Bench {
    readonly recipe: Recipe;
    readonly arts: ReadonlyMap<string, ArtState>;
    readonly sources: ReadonlyMap<string, ArtSource>;
    readonly blanks: ReadonlyMap<string, BlankPlan>;
    readonly done: readonly StepPlan[];
    readonly memo: Memo;
}

export function planStep(step: Step, bench: Bench): StepPlan {
    const plan = planOne(step, bench);
    const { blank } = plan;
    if (blank === undefined) return plan;
    const isFront = sideOf(lieBefore(bench.recipe.steps, step.index, blank)) === 'front';
    return { ...plan, face: isFront ? blank : `${blank} back` };
}

function planOne(step: Step, bench: Bench): StepPlan {
    const base = { step, title: stepTitle(step), times: stepTimes(step, 0) };
    switch (step.kind) {
        case 'engrave':
        case 'cut': {
            const blank = bench.blanks.get(step.blank.value ?? '');
            if (blank === undefined) return { ...base, unplanned: 'its blank is not known' };
            const laser = planLaser(step, bench.recipe, { ...bench, blank });
            if ('unplanned' in laser) return { ...base, blank: blank.name, unplanned: laser.unplanned };
            const lie = lieBefore(bench.recipe.steps, step.index, blank.name);
            const lying = isSameLie(lie, firstLie) ? laser : { ...laser, lie };
            return { ...base, blank: blank.name, laser: lying, times: stepTimes(step, laser.machine) };
        }
        case 'fill': {
            const pocket = carved(step.pocket.value, bench);
            if (pocket?.laser === undefined)
                return { ...base, ...onBlank(pocket?.blank), unplanned: missing(step.pocket.value, bench) };
            const { depth } = pocket.laser;
            if (depth === undefined) {
                return { ...base, ...onBlank(pocket.blank), unplanned: `the depth of ${pocket.laser.step.name} is not known` };
            }
            const fill = planFill(step, pocket.laser.step as Engrave, hollowOf({ ...pocket.laser, depth }), bench.recipe);
            return { ...base, ...onBlank(pocket.blank), fill, times: fillTimes(fill) };
        }
        case 'inlay':
            return { ...base, ...inlayOf(step, bench) };
        case 'sand':
            return { ...base, ...onBlank(step.blank.value), sand: sandOf(step) };
        case 'seal':
        case 'finish':
        case 'mask':
        case 'peel':
        case 'flip':
            return { ...base, ...onBlank(step.blank.value) };
        case 'check':
            return { ...base, ...onBlank(carved(step.step.value, bench)?.blank) };
        default:
            return base;
    }
}

function onBlank(name: string | undefined): Pick<StepPlan, 'blank'> {
    return name === undefined ? {} : { blank: name };
}

function carved(name: string | undefined, bench: Bench): StepPlan | undefined {
    return name === undefined ? undefined : bench.done.find(({ step }) => step.kind === 'engrave' && step.name === name);
}

function inlayOf(step: Inlay, bench: Bench): Partial<StepPlan> {
    const relief = burntOrCut(step.relief.value, bench);
    const pocket = burntOrCut(step.pocket.value, bench);
    if (relief?.laser === undefined || pocket?.laser === undefined) {
        const name = relief?.laser === undefined ? step.relief.value : step.pocket.value;
        return { ...onBlank(pocket?.blank), unplanned: missing(name, bench) };
    }
    return {
        ...onBlank(pocket.blank),
        inlay: planInlay(step, {
            relief: relief.laser,
            pocket: pocket.laser,
            half: halfAsBurnt(relief.laser, bench.blanks.get(relief.laser.blank)?.thickness),
            below: sandedBelow(step, pocket.laser, bench.recipe),
            memo: bench.memo,
        }),
    };
}

function burntOrCut(name: string | undefined, bench: Bench): StepPlan | undefined {
    return name === undefined ? undefined : bench.done.find(({ step }) => isCarved(step) && step.name === name);
}

function isCarved(step: Step): step is Engrave | Cut {
    return step.kind === 'engrave' || step.kind === 'cut';
}

/** Why a step that builds on an earlier one has nothing to build on. */
function missing(name: string | undefined, bench: Bench): string {
    if (name === undefined) return 'what it builds on is not known';
    const later = bench.recipe.steps.some((step) => isCarved(step) && step.name === name);
    const planned = bench.done.some(({ step }) => isCarved(step) && step.name === name);
    return later && !planned ? `${name} comes only after it` : `${name} could not be worked out`;
}

/** What a sanding takes off, and with which grits. */
export function sandOf(step: Sand): SandPlan {
    const below = step.take === undefined ? exactly(0) : atLeast(intervalOf(step.take), 0);
    const grains = step.grits.flatMap((grit) => grit.grain?.value ?? []);
    const { takes, short } = sandingSequence(grains, below.value);
    return {
        below,
        grits: step.grits.map((grit) => Number(grit.name)).filter(Number.isFinite),
        takes: short === 0 && grains.length === step.grits.length ? takes : [],
    };
}

/** All that later sanding takes off the face that holds the inlay. */
export function sandedBelow(inlay: Inlay, { blank, lie }: Pick<LaserPlan, 'blank' | 'lie'>, recipe: Recipe): Interval {
    let sum = exactly(0);
    for (const step of recipe.steps) {
        if (step.kind !== 'sand' || step.index < inlay.index || step.blank.value !== blank) continue;
        if (sideOf(lieBefore(recipe.steps, step.index, blank)) !== sideOf(lie ?? firstLie)) continue;
        const { below } = sandOf(step);
        sum = { value: sum.value + below.value, low: sum.low + below.low, high: sum.high + below.high };
    }
    return sum;
}
