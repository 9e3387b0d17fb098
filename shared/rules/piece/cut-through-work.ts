import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { isOpenPocket } from '../../piece/column';
import type { Met } from '../../piece/face';
import { type Boxed, boxed, boxesMeet } from '../../piece/partition';
import type { Plan, StepPlan } from '../../plan/plan';
import { showArea, showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { type Message, phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { contentOf, faceAfter, faceBefore, nameOf, negligible, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule, type Said } from '../rule';

/** A cut that runs shorter through something only touches its edge, mm. */
const leastLength = 1;

const page: Page = {
    id: 'cut-through-work',
    title: 'Cut through work',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A cut runs through an open pocket that is filled only afterwards, through an inlay, or its hole takes out part of an engraving.',
    why: 'Resin runs out at a cut wall, a veneer chars and comes loose along it, and what a hole takes out of a mark is gone.',
    mend: 'Keep the cut off the work, or finish the fill first. A part’s own outline may run through an inlay.',
    source: commonPractice,
};

export const cutThroughWork: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, blank } = stepPlan;
            const after = faceAfter(plan, step.index, blank);
            if (step.kind !== 'cut' || after === undefined || blank === undefined) continue;
            const spoken = new Set<number>();
            for (const found of [
                ...openPockets(plan, step, after.met),
                ...(after.fell === undefined ? [] : inlays(plan, after.met)),
                ...holed(plan, stepPlan),
            ]) {
                if (spoken.has(found.other.index)) continue;
                spoken.add(found.other.index);
                yield finding(page, {
                    severity: 'warning',
                    message: found.message(step.name),
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(blank, found.regions),
                    related: [{ message: phrase`${nameOf(found.other)} is here.`, where: found.other.where }],
                    fixes: found.fixes,
                } satisfies Said);
            }
        }
    },
};

interface Found {
    readonly other: Step;
    readonly regions: readonly Boxed['region'][];
    readonly fixes: Fix[];
    message(cut: string): Message;
}

/** Pockets that the cut runs through and that are poured or laid full only later. */
function openPockets(plan: Plan, cut: Step, met: readonly Met[]): Found[] {
    return plan.steps.flatMap(({ step, laser }): Found[] => {
        if (step.kind !== 'engrave' || step.index >= cut.index || laser === undefined) return [];
        const crossed = met.filter(({ column }) => isOpenPocket(column) && column.digs.some((dig) => dig.step === step.index));
        const length = sizeOfMet(crossed).length;
        const later = length > leastLength ? contentOf(plan, step.index, cut.index) : undefined;
        // What is laid or poured in it already leaves only its clearance open.
        if (later === undefined || contentOf(plan, step.index)!.step.index < cut.index) return [];
        const what =
            later.step.kind === 'fill'
                ? phrase`${later.step.resin?.name ?? phrase`the fill`} runs out there`
                : phrase`the veneer has no edge there`;
        return [
            {
                other: step,
                regions: crossed.map(({ region }) => region),
                fixes: [
                    {
                        title: phrase`Do ${nameOf(cut)} at the end`,
                        changes: [{ do: 'move', statement: cut.whole, after: lastOn(plan, later).whole }],
                    },
                ],
                message: (name) =>
                    phrase`${name} cuts ${showLength(length)} through ${step.name}, which is ${later.step.kind === 'fill' ? phrase`filled` : phrase`inlaid`} only afterwards: ${what}. Cut it once the face is sanded, or keep the cut off it.`,
            },
        ];
    });
}

/** The step after which what was put in a pocket is level: the next sanding of its blank, else the last wait behind it. */
function lastOn(plan: Plan, content: StepPlan): Step {
    const after = plan.steps.filter(({ step }) => step.index > content.step.index);
    const sanded = after.find(({ step, blank }) => step.kind === 'sand' && blank === content.blank);
    return (sanded ?? after.find(({ step }) => step.kind === 'wait') ?? content).step;
}

function inlays(plan: Plan, met: readonly Met[]): Found[] {
    return plan.steps.flatMap(({ step, inlay }): Found[] => {
        if (inlay === undefined) return [];
        const crossed = met.filter(({ column }) =>
            column.layers.some((layer) => layer.kind === 'wood' && layer.step === step.index),
        );
        const length = sizeOfMet(crossed).length;
        if (length <= leastLength) return [];
        return [
            {
                other: step,
                regions: crossed.map(({ region }) => region),
                fixes: [],
                message: (name) =>
                    phrase`${name} cuts ${showLength(length)} through ${inlay.relief.name}, a veneer on glue: it chars and comes loose along the cut. Keep the cut off it.`,
            },
        ];
    });
}

/** Marks that are still open, and of which a hole takes out a part. */
function holed(plan: Plan, { step: cut, blank }: StepPlan): Found[] {
    const fell = faceAfter(plan, cut.index, blank)?.fell;
    const hole = fell && boxed(fell);
    const face = faceBefore(plan, cut.index, blank);
    if (hole === undefined || face === undefined) return [];
    return plan.steps.flatMap(({ step, laser }): Found[] => {
        if (step.kind !== 'engrave' || laser === undefined || laser.through || step.index >= cut.index) return [];
        // What is left open around what was put in is its clearance.
        if (contentOf(plan, step.index) !== undefined) return [];
        const lost = face.cells.flatMap(({ region, box, column }) => {
            const marks =
                column.tone === step.index || (isOpenPocket(column) && column.digs.some((dig) => dig.step === step.index));
            return marks && boxesMeet(box, hole.box) ? [intersect(region, hole.region)] : [];
        });
        const size = lost.reduce((sum, region) => sum + area(region), 0);
        if (size <= negligible) return [];
        return [
            {
                other: step,
                regions: lost.filter(({ rings }) => rings.length > 0),
                fixes: [],
                message: (name) =>
                    phrase`${name} takes ${showArea(size)} out of ${step.name}, which is engraved there: move one of them.`,
            },
        ];
    });
}
