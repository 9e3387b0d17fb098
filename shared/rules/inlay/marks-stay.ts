import { scorchDepth } from '../../piece/column';
import type { InlayPlan, Plan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { atItsWord, type Figures } from '../figures';
import { faceAtEnd } from '../helpers/face-at';
import { lengthWithin } from '../helpers/length-within';
import { taking } from '../helpers/sanding-off';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';
import { leastLeft } from './veneer-thin';

/** What takes a mark off for sure, and more than anybody would sand for it, mm. */
const enough = 0.1;
const mostTaken = 0.15;

const page: Page = {
    id: 'marks-stay',
    title: 'Marks stay on the face',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'The board is not sanded deep enough to take the marks of an inlay off its face.',
    why: 'The marks on the board are light discs, as deep as the colour reaches: about 0.08 mm. Less sanding leaves them in sight beside the inlay.',
    mend: 'Sand at least 0.1 mm off the face (`flush then 0.10 mm`), or leave the marks out.',
    source: commonPractice,
};

export const marksStay: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, inlay } of plan.steps) {
            if (step.kind !== 'inlay' || inlay?.marks === undefined || inlay.marks.placed === 0) continue;
            const face = faceAtEnd(plan, inlay.pocketLaser.blank);
            if (face?.marks.some((mark) => mark.step === inlay.pocket.index) !== true) continue;
            const taken = face.level.value > 0 ? phrase`only ${showLength(face.level.value)} comes` : phrase`nothing comes`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`The marks of ${inlay.pocket.name} stay in sight: ${taken} off the face of ${face.blank}.`,
                where: step.marks?.where ?? step.where,
                step: step.index,
                fixes: sandMore(plan, inlay, step, figures),
            });
        }
    },
};

/** Sands the marks off in the last sanding of the board, where enough of the veneer stays for that. */
function sandMore({ steps }: Plan, { pocket, stack }: InlayPlan, { index }: Inlay, figures: Figures): Fix[] {
    const last = steps.findLast(
        ({ step, face }) => step.kind === 'sand' && step.index > index && face === steps[pocket.index]?.face,
    );
    if (last?.step.kind !== 'sand') return [];
    const { take, whole } = last.step;
    const found = lengthWithin({ low: scorchDepth, high: mostTaken, best: enough }, take?.unit ?? 'mm');
    const more = (found?.mm ?? 0) - (take?.value ?? 0);
    if (found === undefined || (stack !== undefined && stack.left.likely.low - more < leastLeft)) return [];
    const { figure } = figures.agree(taking(page.id, last.step, found.mm));
    if (figure === undefined) return [];
    const text = showLength(figure, take?.unit ?? 'mm');
    const change: Change =
        take === undefined ? { do: 'add', block: whole, statement: `take ${text}` } : { do: 'replace', where: take.where, text };
    return [{ title: phrase`Take ${text} off the face`, preferred: true, changes: [change] }];
}
