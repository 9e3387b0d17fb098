import { contrast, hardlyShows } from '../../bench/contrast';
import type { Plan, StepPlan } from '../../plan/plan';
import type { Wood } from '../../recipe/stock';
import { woodOf } from '../helpers/blank-names';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'dust-stains',
    title: 'Coloured dust beside a pale wood',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'An inlay joins a wood of which the dust stains (`dust stains`, as padauk’s) with a paler one, is sanded, and the next coat goes on without a step that blows or draws the dust out.',
    why: 'Oil, spirit and varnish dissolve the colour of that dust and carry it into the pores of the pale wood, where no sanding gets it out.',
    mend: 'Blow the dust off with dry air or draw it out, wipe nothing wet across the joint, and close both woods with a thin coat of shellac before oil or varnish.',
    source: commonPractice,
};

const statement = 'do "blow the dust out of the pale wood with dry air, wipe nothing wet across it" for 3 min';

export const dustStains: Rule = {
    page,
    *examine(plan) {
        const told = new Set<number>();
        for (const { step, blank, inlay } of plan.steps) {
            const pair = inlay === undefined ? undefined : stained(plan, blank, inlay.reliefLaser.blank);
            const sand = pair === undefined ? undefined : sandingAfter(plan, blank, step.index);
            const coat = sand === undefined ? undefined : coatAfter(plan, blank, sand.step.index);
            if (pair === undefined || sand === undefined || coat === undefined || told.has(coat.step.index)) continue;
            const last = plan.steps.findLast(
                (other) => other.step.kind === 'sand' && other.blank === blank && other.step.index < coat.step.index,
            );
            const from = last?.step.index ?? sand.step.index;
            if (
                plan.steps.some(
                    (other) => other.step.kind === 'do' && drawsDust.test(other.step.text) && between(other, from, coat),
                )
            )
                continue;
            told.add(coat.step.index);
            yield finding(page, {
                severity: 'warning',
                message: `The dust of ${pair.dark} stains ${pair.pale}: no step takes it out between the sanding and this coat.`,
                where: coat.step.where,
                step: coat.step.index,
                related: [{ message: 'It is sanded here.', where: (last ?? sand).step.where }],
                fixes: [
                    {
                        title: 'Add a step that blows the dust out',
                        preferred: true,
                        changes: [statementBefore(coat.step, statement)],
                    },
                ],
            });
        }
    },
};

const drawsDust = /\b(?:dust|blow|vacuum|extract|brush)/i;

function between({ step }: StepPlan, from: number, to: StepPlan): boolean {
    return step.index > from && step.index < to.step.index;
}

function sandingAfter(plan: Plan, blank: string | undefined, after: number): StepPlan | undefined {
    return plan.steps.find((other) => other.step.kind === 'sand' && other.blank === blank && other.step.index > after);
}

function coatAfter(plan: Plan, blank: string | undefined, after: number): StepPlan | undefined {
    return plan.steps.find(
        ({ step, blank: of }) => (step.kind === 'seal' || step.kind === 'finish') && of === blank && step.index > after,
    );
}

/** Which of the two woods stains the other; undefined where neither does, or they are alike. */
function stained(plan: Plan, board: string | undefined, veneer: string): { dark: string; pale: string } | undefined {
    const [one, other] = [woodOf(plan, board), woodOf(plan, veneer)];
    if (one === undefined || other === undefined) return undefined;
    const [dark, pale] = one.dustStains === true ? [one, other] : [other, one];
    if (dark.dustStains !== true || pale.dustStains === true) return undefined;
    return isPaler(pale, dark) ? { dark: dark.name, pale: pale.name } : undefined;
}

function isPaler(pale: Wood, dark: Wood): boolean {
    const toWhite = (wood: Wood) => contrast(wood.colour, '#ffffff') ?? 0;
    return toWhite(dark) - toWhite(pale) > hardlyShows;
}
