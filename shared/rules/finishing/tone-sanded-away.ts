import { area } from '../../geometry/measure';
import { scorchDepth } from '../../piece/column';
import type { Plan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import { faceAfter, negligible } from '../helpers/face-at';
import { markOf, pieceBefore } from '../helpers/piece-at';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'tone-sanded-away',
    title: 'Sanding takes the colour away',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'A face is sanded after an engraving has coloured it, deeper than the colour reaches.',
    why: 'A mere colour lies in the outermost tenth of a millimetre. Sanding for anything else on the same face takes it along.',
    mend: 'Sand first and colour last, or give the engraving a depth.',
    source: `${commonPractice} Colour is taken to reach ${scorchDepth} mm.`,
};

export const toneSandedAway: Rule = {
    page,
    *examine(plan) {
        for (const [index, { step, blank, sand }] of plan.steps.entries()) {
            if (step.kind !== 'sand' || sand === undefined) continue;
            const before = pieceBefore(plan, index, blank);
            const after = pieceBefore(plan, index + 1, blank);
            for (const mark of before?.marks ?? []) {
                const toned = plan.steps[mark.step]?.step;
                if (
                    mark.kind !== 'toned' ||
                    mark.registration === true ||
                    mark.content !== undefined ||
                    toned?.kind !== 'engrave' ||
                    markOf(after, mark.step) !== undefined ||
                    !isColourLost(plan, index, mark.step, blank)
                )
                    continue;
                yield finding(page, {
                    severity: 'warning',
                    message: `Sanding takes ${showLength((after?.face ?? sand.below).value - mark.depth.value)} off the face that ${toned.name} was burnt into, and with it its colour.`,
                    where: step.take?.where ?? step.where,
                    step: step.index,
                    related: [{ message: `${toned.name} is coloured here.`, where: toned.where }],
                    fixes: plan.steps.some((other) => other.blank === blank && (other.fill ?? other.inlay) !== undefined)
                        ? [] // what is filled has to be sanded afterwards
                        : [
                              {
                                  title: `Sand before ${toned.name}`,
                                  changes: [{ do: 'move', statement: step.whole, before: toned.whole }],
                              },
                          ],
                });
            }
        }
    },
};

/** Whether a sanding comes down to where a colour was burnt: one on the floor of a pocket lies below it. */
function isColourLost(plan: Plan, sand: number, toned: number, blank: string | undefined): boolean {
    const burnt = faceAfter(plan, toned, blank);
    const sanded = faceAfter(plan, sand, blank);
    if (burnt === undefined || sanded === undefined) return true;
    const coloured = burnt.cells.filter(({ column }) => column.tone === toned);
    const lost = coloured.filter(({ column }) => column.top.value < sanded.level.value);
    return lost.reduce((sum, { region }) => sum + area(region), 0) > negligible;
}
