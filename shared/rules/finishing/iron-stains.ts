import type { Plan, StepPlan } from '../../plan/plan';
import type { Finding } from '../../recipe/finding';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Do } from '../../recipe/step';
import { woodOf } from '../helpers/blank-names';
import { faceBefore } from '../helpers/face-at';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'iron-stains',
    title: 'Steel wool before water',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition:
        'A `do` step rubs with steel wool, a wire brush or the like, and the next coat or glue on a blank brings water (`sets by water`), with no sanding of it between. On a coat, or on wood without much tannin, words of a magnet, a tack cloth or the extractor are enough. What speaks of blackening the wood is meant so.',
    why: 'Steel wool breaks, and its slivers stay in the pores. With water they rust; with the tannin of oak, cedar, walnut and their like (`kind tannic-wood`) they turn blue-black, which looks like mildew and comes up hours or weeks after the coat has dried.',
    mend: 'Rub with a grey synthetic pad, bronze wool or fine paper. What is done already: draw the steel off with a magnet and a tack cloth, or sand the bare wood again. Oxalic acid takes such a stain out of bare wood; it is poisonous, and its data sheet comes first.',
    source: 'Iron tannate after steel wool under water-based coats: fact sheet 2 of the forest products centre of Louisiana State University (seen). Nearly all woods, oak and cedar above all: Knaebe, Iron Stain on Wood, Forest Products Laboratory, 2013 (its abstract seen). Disputed by finishers who wipe and blow with care over a coat: there that is taken for enough.',
};

const iron = /\b(?:steel|wire|iron)[\s-]+(?:wool|brush|filings)/i;
const denied = /\b(?:(?:no|not|never|without|instead of|rather than)\b[^,.;:]*|(?:brass|bronze|copper|nylon|synthetic)[\s-]+)$/i;
const meant = /\b(?:blacken|eboni|fum(?:e|ing)|vinegar|acetate)/i;
const drawsOff = /\b(?:magnet|tack|vacuum|extract|blow)/i;

export const ironStains: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'do' || !leavesIron(step.text)) continue;
            // One wood tells of it: the one that suffers most.
            const found = plan.blanks.flatMap(({ name }) => onBlank(plan, step, name) ?? []);
            const worst = found.find(({ severity }) => severity === 'warning') ?? found[0];
            if (worst !== undefined) yield worst;
        }
    },
};

function leavesIron(text: string): boolean {
    const found = iron.exec(text);
    return found !== null && !denied.test(text.slice(0, found.index)) && !meant.test(text);
}

function onBlank(plan: Plan, rubbed: Do, blank: string): Finding | undefined {
    const next = plan.steps.find((other) => other.step.index > rubbed.index && meets(other, blank));
    const wet = next === undefined || next.step.kind === 'sand' ? undefined : laidBy(next.step);
    if (next === undefined || wet?.setsBy !== 'water') return undefined;
    const wood = woodOf(plan, blank);
    const onCoat = faceBefore(plan, rubbed.index, blank)?.bare.layers[0]?.kind === 'coat';
    const tannic = !onCoat && wood?.kinds?.includes('tannic-wood') === true;
    if (!tannic && isDrawnOff(plan, rubbed, next)) return undefined;
    const statement = 'do "draw the steel off with a magnet and a tack cloth" for 5 min';
    return finding(page, {
        severity: tannic ? 'warning' : 'info',
        message: tannic
            ? phrase`Steel stays in the pores of ${wood!.name}, and ${wet.name} brings water to it: its tannin turns blue-black. Rub with a grey synthetic pad instead, or sand ${blank} again first.`
            : phrase`Slivers of steel stay on ${blank}, and ${wet.name} brings water to them: they rust. Draw them off first, or rub with a grey synthetic pad.`,
        where: rubbed.where,
        step: rubbed.index,
        related: [{ message: phrase`Water comes to it here.`, where: next.step.where }],
        fixes: tannic
            ? []
            : [
                  {
                      title: phrase`Add a step that draws the steel off`,
                      preferred: true,
                      changes: [statementBefore(next.step, statement)],
                  },
              ],
    });
}

/** Whether a step sands a blank or lays something on its wood. */
function meets({ step, blank, inlay }: StepPlan, name: string): boolean {
    if (step.kind === 'inlay') return blank === name || inlay?.reliefLaser.blank === name;
    return blank === name && /^(?:sand|seal|finish)$/.test(step.kind);
}

function isDrawnOff({ recipe }: Plan, rubbed: Do, next: StepPlan): boolean {
    return recipe.steps.some(
        (step) => step.kind === 'do' && step.index >= rubbed.index && step.index < next.step.index && drawsOff.test(step.text),
    );
}
