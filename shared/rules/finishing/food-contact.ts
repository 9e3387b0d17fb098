import { hair, isOpenPocket } from '../../piece/column';
import type { Face } from '../../piece/face';
import type { BlankPlan, Plan } from '../../plan/plan';
import type { Quantity } from '../../quantity/quantity';
import { showTime } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { type Message, phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { unnamedGlue } from '../../recipe/stock';
import { atItsWord, type Figures } from '../figures';
import { contentsOf, isFinished, isSealed } from '../helpers/contents';
import { elapsed, longEnough } from '../helpers/elapsed';
import { contentOf, faceAtEnd } from '../helpers/face-at';
import { longerWait } from '../helpers/longer-wait';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'food-contact',
    title: 'What food will touch',
    severities: ['warning', 'info', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A blank is `touched by food`, and at the end it bears a finish, sealer, resin or glue of which the stock names nobody who says that food may touch it, or that has not cured; or burnt wood lies open on it.',
    why: 'No class of finish is fit for food by itself: that hangs on the very product, its driers and colours, and on its cure. Char rubs off on food and cloth, and fat and crumbs stay behind in a burnt hollow.',
    mend: 'Use a product whose maker declares it, and write that down in the stock (`food "…"`); wait out its cure; keep the engraving off the side that food touches, or fill it. With good reason, `allow food-contact because "…"`.',
    source: '21 CFR 175.300 (seen) asks for a continuous film and for limits on what food can draw out of it. The rest is common practice, no source. Food law where you sell comes first.',
};

export const foodContact: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const blank of plan.blanks) {
            const face = faceAtEnd(plan, blank.name);
            if (blank.blank.touchedBy?.value !== 'food' || face === undefined || face.inside !== undefined) continue;
            yield* sheetFindings(blank);
            yield* coatFindings(plan, blank, face, figures);
            yield* hollowFindings(plan, blank, face, figures);
        }
    },
};

interface Fluid {
    readonly name: string;
    readonly food?: string;
    readonly cure?: Quantity;
}

function* sheetFindings({ blank }: BlankPlan): Iterable<Finding> {
    const made = blank.sheet?.madeOf;
    if (made === undefined || !unnamedGlue.has(made.value)) return;
    yield finding(page, {
        severity: 'warning',
        message: phrase`${blank.name} is made of ${made.value}: food touches its glue at every edge and in every engraving.`,
        where: blank.touchedBy!.where,
        related: [{ message: phrase`It is made of this.`, where: made.where }],
    });
}

/** What was spread over all of it. */
function* coatFindings(plan: Plan, blank: BlankPlan, face: Face, figures: Figures): Iterable<Finding> {
    for (const { step, blank: name } of plan.steps) {
        if (name !== blank.name) continue;
        if (step.kind === 'finish' && step.coat !== undefined) yield* ofFluid(plan, blank, step, step.coat, figures);
        if (step.kind === 'seal' && step.sealer !== undefined && isSealed(plan, face.bare))
            yield* ofFluid(plan, blank, step, step.sealer, figures);
    }
}

/** What lies in its hollows, or what lies open because nothing does. */
function* hollowFindings(plan: Plan, blank: BlankPlan, face: Face, figures: Figures): Iterable<Finding> {
    for (const { step: index } of contentsOf(plan, face)) {
        const step = plan.steps[index]!.step;
        if (step.kind === 'fill' && step.resin !== undefined) yield* ofFluid(plan, blank, step, step.resin, figures);
        if (step.kind === 'inlay' && step.glue !== undefined) yield* ofFluid(plan, blank, step, step.glue, figures);
    }
    for (const [index, isColour] of burntOpen(face)) {
        const step = plan.steps[index]?.step;
        // What is left open around what was put in is its clearance.
        if (step?.kind !== 'engrave' || contentOf(plan, index) !== undefined) continue;
        yield finding(page, {
            severity: isFinished(plan, face.bare) ? 'info' : 'warning',
            message: phrase`${step.name} leaves burnt wood open on ${blank.name}, which food touches: char rubs off, and ${isColour ? 'stains' : phrase`crumbs stay in the hollow`}.`,
            where: step.where,
            step: step.index,
            related: [touched(blank)],
        });
    }
}

/** Steps whose burnt wood is seen, and whether they only colour it. */
function burntOpen({ cells }: Face): Map<number, boolean> {
    const found = new Map<number, boolean>();
    for (const { column } of cells) {
        if (column.tone !== undefined) found.set(column.tone, true);
        const dug = column.digs.findLast(({ depth }) => depth.value > hair)?.step;
        if (dug !== undefined && isOpenPocket(column)) found.set(dug, false);
    }
    return found;
}

function* ofFluid(plan: Plan, blank: BlankPlan, step: Step, fluid: Fluid, figures: Figures): Iterable<Finding> {
    const base = { where: step.where, step: step.index, related: [touched(blank)] };
    if (fluid.food === undefined) {
        // Of glue there is no more than a hair in the seams.
        yield finding(page, {
            ...base,
            severity: step.kind === 'inlay' ? 'info' : 'warning',
            message: phrase`Food touches ${blank.name}, but nothing written of ${fluid.name} says that food may touch it. Write whose word it is with \`food "…"\` in its block, or take another.`,
        });
        return;
    }
    const end = plan.recipe.steps.length;
    const gone = elapsed(plan, step.index, end);
    const wanted = fluid.cure?.value ?? 0;
    if (longEnough(gone, wanted)) return;
    yield finding(page, {
        ...base,
        severity: 'warning',
        rests: [fluid.cure?.where],
        message: phrase`${fluid.name} cures for ${showTime(wanted)} before food may touch ${blank.name}; here it has had ${showTime(gone)}.`,
        fixes: longerWait(page.id, plan, step, undefined, wanted - gone, figures),
    });
}

function touched({ blank }: BlankPlan): { message: Message; where: NonNullable<typeof blank.touchedBy>['where'] } {
    return { message: phrase`Food touches it, as is written here.`, where: blank.touchedBy!.where };
}
