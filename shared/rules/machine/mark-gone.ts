import { intersect, subtract } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { grow } from '../../geometry/offset';
import type { Region } from '../../geometry/region';
import { isOpenPocket } from '../../piece/column';
import type { Face } from '../../piece/face';
import { isSameLie, regionAs, sideOf } from '../../piece/lie';
import type { LaserPlan } from '../../plan/laser-plan';
import type { FoundPlace } from '../../plan/laying';
import { lieBefore, lieOf } from '../../plan/lies';
import type { Plan } from '../../plan/plan';
import { type SetUp, setUps } from '../../plan/set-ups';
import { type Message, phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { faceBefore, nameOf } from '../helpers/face-at';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** How much of a mark may be gone before nothing can be found by it. @commonPractice */
const enoughLeft = 0.5;
/** How much wood around a hole holds a pin, mm. @commonPractice */
const holdsPin = 1;

const page: Page = {
    id: 'mark-gone',
    title: 'What it is found by is not there',
    severities: ['error', 'warning'],
    condition:
        'A `found by` names a step that has not been done by then, that is done on another blank, or of which nothing can be used any more: it was cut off with the waste, poured full, covered, sanded away, or it lies on the face that is down and does not go through.',
    error: 'The step that is named is done later, or on another blank: there is nothing to find the place by.',
    why: 'Marks and holes in the waste are the only thing that two set-ups have in common. Once the waste is off, nothing says where the origin was.',
    mend: 'Burn or cut them before, lay them where the waste stays until the set-up is done, or do what takes them after it.',
    source: `${commonPractice} What is left of them is what the model of the piece says; half of it is enough, with 1 mm of wood around a pin.`,
};

export const markGone: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        yield* neverThere(plan);
        for (const setUp of setUps(plan)) {
            const { place, lasers } = setUp;
            const mark = place?.mark;
            const [laser] = lasers;
            const found = place?.said.found?.of;
            if (place === undefined || mark === undefined || found === undefined || laser === undefined) continue;
            if (mark.blank !== setUp.blank.name || mark.step.index > place.said.index) continue;
            const lost = lostBefore(plan, place, mark, laser);
            if (lost === undefined) continue;
            yield finding(page, {
                severity: 'warning',
                message: wordsOf(setUp, mark, lost),
                where: found.where,
                step: place.said.index,
                related: [
                    {
                        message: phrase`${mark.step.name} is ${mark.step.kind === 'cut' ? 'cut' : 'burnt'} here.`,
                        where: mark.step.where,
                    },
                    ...(lost === 'down' ? [] : [{ message: phrase`It is lost here.`, where: lost.where }]),
                ],
            });
        }
    },
};

/** What is named is done later than it is needed, or on another blank; a fence is none of the recipe's work. */
function* neverThere(plan: Plan) {
    for (const { step } of plan.steps) {
        const found = step.kind === 'flip' || step.kind === 'do' ? step.found : undefined;
        const mark = found?.of;
        const made = plan.steps.find(({ laser }) => laser !== undefined && laser.step.name === mark?.value);
        if (found === undefined || mark === undefined || made === undefined) continue;
        const blank = step.kind === 'flip' ? step.blank.value : nextBlank(plan, step.index);
        const why = whyNeverThere(made.step.index > step.index, blank === undefined || made.blank === blank, found.by);
        if (why === undefined) continue;
        const message = {
            later: phrase`${mark.value!} is done after this: there is nothing yet to find the place by. Move ${mark.value!} before the set-up in which ${blank ?? 'the blank'} lay first.`,
            elsewhere: phrase`${mark.value!} is done on ${made.blank ?? 'another blank'}, but it is ${blank ?? 'another one'} that is laid down here. Name a step on ${blank ?? 'that blank'}.`,
            fence: phrase`A fence stands on the bed and is none of the recipe’s steps: leave out \`of ${mark.value!}\`, or write \`found by marks of ${mark.value!}\`.`,
        }[why];
        yield finding(page, { severity: 'error', message, where: mark.where, step: step.index });
    }
}

function whyNeverThere(isLater: boolean, isHere: boolean, by: FoundPlace['by']): 'later' | 'elsewhere' | 'fence' | undefined {
    if (by === 'fence') return 'fence';
    if (isLater) return 'later';
    return isHere ? undefined : 'elsewhere';
}

function nextBlank({ steps }: Plan, after: number): string | undefined {
    return steps.find(({ step, laser }) => step.index > after && laser !== undefined)?.laser?.blank;
}

function wordsOf({ number, blank }: SetUp, { step }: LaserPlan, lost: Step | 'down'): Message {
    if (lost === 'down')
        return phrase`${step.name} does not go through ${blank.name} and lies on the face that is down in set-up ${number}: burn it on both faces from one origin, cut it through, or use a fence.`;
    return phrase`${step.name} cannot be used any more when set-up ${number} is laid down: ${nameOf(lost) === 'a step' ? `step ${lost.index + 1}` : nameOf(lost)} takes it. Lay ${step.name} where it stays until then, or do that step after set-up ${number}.`;
}

/** The step that takes what a blank is found by, before it is laid down; undefined where enough of it is left. */
function lostBefore(plan: Plan, { by, said }: FoundPlace, mark: LaserPlan, laser: LaserPlan): Step | 'down' | undefined {
    // The frame lies apart from the part that is laid back into it.
    if (by === 'frame') return undefined;
    const goesThrough = mark.step.kind === 'cut' || mark.through;
    const use = laser.step.index;
    if (!goesThrough && sideOf(lieOf(mark)) !== sideOf(lieOf(laser))) return 'down';
    const left = (index: number): boolean => isLeft(plan, mark, index, goesThrough);
    if (left(use)) return undefined;
    for (let index = mark.step.index + 1; index < use; index++) if (!left(index + 1)) return plan.steps[index]!.step;
    return said;
}

/** Whether enough of a mark can still be used just before a step. Of a face that is not known nothing is said. */
function isLeft(plan: Plan, mark: LaserPlan, index: number, goesThrough: boolean): boolean {
    const face = faceBefore(plan, index, mark.blank);
    const size = plan.blanks.find(({ name }) => name === mark.blank)?.size;
    const whole = area(mark.region);
    if (face === undefined || size === undefined || !(whole > 0)) return true;
    const [from, to] = [lieOf(mark), lieBefore(plan.recipe.steps, index, mark.blank)];
    const region = isSameLie(from, to) ? mark.region : regionAs(mark.region, from, to, size);
    if (goesThrough) return isHole(face, region);
    if (sideOf(from) !== sideOf(to)) return true; // looked at again once it is up
    const seen = face.cells.filter(
        ({ column }) =>
            column.tone === mark.step.index || (isOpenPocket(column) && column.digs.some(({ step }) => step === mark.step.index)),
    );
    const left = seen.reduce((sum, cell) => sum + area(intersect(cell.region, region)), 0);
    return left >= enoughLeft * whole;
}

/** There is wood around it, and nothing has run into it. */
function isHole(face: Face, region: Region): boolean {
    const around = subtract(grow(region, holdsPin), region);
    if (area(intersect(face.body.region, around)) < enoughLeft * area(around)) return false;
    const full = face.cells.filter(({ column }) =>
        column.layers.some(({ kind, step }) => kind === 'resin' && step !== undefined),
    );
    return full.reduce((sum, cell) => sum + area(intersect(cell.region, region)), 0) < enoughLeft * area(region);
}
