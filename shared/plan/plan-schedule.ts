import { benchTimes } from '../bench/bench-times';
import { schedule } from '../bench/schedule';
import type { Turn } from '../bench/work';
import type { Face } from '../piece/face';
import type { Recipe } from '../recipe/recipe';
import { contentKey } from './content-key';
import type { Memo } from './memo';
import type { BlankPlan, PlanSchedule, StepPlan, StepSpan, StepWork } from './plan';
import { sittingsOf } from './sittings';
import { handTime } from './step-times';

/**
 * Lays the recipe's steps out for all the pieces it makes: one pair of hands, one laser, and waits
 * that run side by side, in the working hours of the shop.
 */
export function planSchedule(
    recipe: Recipe,
    blanks: readonly BlankPlan[],
    steps: readonly StepPlan[],
    faces: readonly (readonly Face[])[],
    memo: Memo,
): PlanSchedule {
    const workday = recipe.shop?.workday?.value;
    const works = worksOf(blanks, steps, faces, recipe.laser?.name);
    const laid = memo.get('schedule', contentKey(works, recipe.make, workday), () => {
        const plain = schedule(works, recipe.make, workday);
        return {
            ...plain,
            spans: steps.map((_, step) => spanOf(plain.turns, works, step)),
            sittings: sittingsOf(plain.turns, works),
        };
    });
    const machine = recipe.make * steps.reduce((sum, { times }) => sum + times.machine, 0);
    return { ...laid, works, machine, ...(workday === undefined ? {} : { workday }) };
}

function spanOf(turns: readonly Turn[], works: readonly StepWork[], step: number): StepSpan {
    let start = Number.POSITIVE_INFINITY;
    let end = 0;
    let ready = 0;
    for (const turn of turns) {
        if (works[turn.work]!.step !== step) continue;
        start = Math.min(start, turn.start);
        end = Math.max(end, turn.end);
        ready = Math.max(ready, turn.ready);
    }
    return { step, start: Number.isFinite(start) ? start : 0, end, ready };
}

/**
 * A step follows the last one that had one of its blanks in hand. A wait belongs to what was done
 * just before it, so that work on another blank may go on meanwhile; free text may mean anything
 * and keeps its place among all blanks.
 */
function worksOf(
    blanks: readonly BlankPlan[],
    steps: readonly StepPlan[],
    faces: readonly (readonly Face[])[],
    laser: string | undefined,
): StepWork[] {
    const everything = blanks.map((blank) => blank.name);
    const last = new Map<string, number>();
    let before: readonly string[] = everything;
    const works: StepWork[] = [];
    for (const plan of steps) {
        const held = plan.step.kind === 'wait' ? before : (blanksOf(faces[plan.step.index] ?? [], plan) ?? everything);
        let after = [...new Set(held.flatMap((name) => last.get(name) ?? []))];
        for (const part of partsOf(plan)) {
            const station = isBurnt(plan) && laser !== undefined ? { station: laser } : {};
            works.push({ ...part, ...station, step: plan.step.index, after });
            after = [works.length - 1];
        }
        for (const name of held) last.set(name, works.length - 1);
        before = held;
    }
    return works;
}

function isBurnt({ step }: StepPlan): boolean {
    return step.kind === 'engrave' || step.kind === 'cut';
}

type Part = Omit<StepWork, 'step' | 'after'>;

/** A step in the parts between which it has to wait: coats, pours. */
function partsOf({ step, times, fill }: StepPlan): Part[] {
    if (step.kind === 'seal' || step.kind === 'finish') {
        const one = step.kind === 'seal' ? benchTimes.sealCoat : benchTimes.finishCoat;
        const between = (step.kind === 'seal' ? step.sealer?.dry?.value : step.coat?.dry?.value) ?? 0;
        return repeated('coat', step.coats, { ...one, machine: 0 }, between);
    }
    if (fill !== undefined) {
        const batch = fill.cups.pieces;
        return repeated('pour', fill.pours.count, { ...benchTimes.mixAndFill, machine: 0, batch }, fill.pours.between);
    }
    return [{ ...handTime(step), machine: times.machine, wait: step.kind === 'wait' ? times.waiting : 0, part: '' }];
}

/** More parts than anybody does: a figure that is none. They are taken together. */
const mostParts = 50;

function repeated(word: string, count: number, work: Omit<Part, 'wait' | 'part'>, between: number): Part[] {
    if (count > mostParts) {
        return [{ ...work, setUp: work.setUp * count, each: work.each * count, wait: between * (count - 1), part: '' }];
    }
    return Array.from({ length: Math.max(1, count) }, (_, index) => ({
        ...work,
        wait: index < count - 1 ? between : 0,
        part: count > 1 ? `${word} ${index + 1} of ${count}` : '',
    }));
}

/** The blanks that a step has in hand; undefined where that is not known. */
function blanksOf(faces: readonly Face[], { blank, inlay }: StepPlan): readonly string[] | undefined {
    if (blank === undefined) return undefined;
    const held = inlay === undefined ? [blank] : [blank, inlay.reliefLaser.blank];
    // What lies glued in another blank is in hand together with it.
    const glued = faces.filter(({ inside }) => inside !== undefined && held.includes(inside)).map(({ blank: name }) => name);
    const holders = faces.filter(({ blank: name }) => held.includes(name)).flatMap(({ inside }) => inside ?? []);
    return [...new Set([...held, ...glued, ...holders])];
}
