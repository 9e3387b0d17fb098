import { leanOf } from '../../plan/cut-half';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { sayMirror } from '../helpers/say-mirror';
import { betterTurnedOver } from '../helpers/side-up';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';
import { widestSeam } from './wide-seam';

const page: Page = {
    id: 'wrong-side-up',
    title: 'Part let in with its wide side first',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `A part that is cut out goes in face up, its walls lean so much that no clearance lets it in with a seam of ${widestSeam} mm or less, and turned over one would.`,
    why: 'A kerf narrows towards the back, so a part is wider there. Face up its wide back has to pass the mouth of the pocket, and on the face a gap stays open all round. Turned over it goes in like a plug and closes as it goes down.',
    mend: 'Write `mirror` in the cut of the part and turn it over, or cut it with a kerf that leans less: more passes, or the focus in the middle of the sheet.',
    source: 'Own derivation: the gap along an edge is the clearance less what both walls take up at the same height. That more passes lean less is common practice, no source.',
};

export const wrongSideUp: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            const over = inlay && betterTurnedOver(inlay, widestSeam);
            if (inlay?.fit === undefined || over === undefined) continue;
            const { relief, reliefLaser, fit, gap } = inlay;
            const isGood = over.bottoms && over.seam <= widestSeam && gap >= over.leastClearance;
            const work = plan.steps.some(({ step: other, blank }) => other.kind === 'engrave' && blank === reliefLaser.blank);
            yield finding(page, {
                severity: 'warning',
                message: phrase`${relief.name} goes in face up, its back first, which is ${showLength(leanOf(reliefLaser))} wider all round: the ${showLength(fit.leastClearance)} of clearance that lets it in leave a seam of ${showLength(fit.leastClearance - fit.closing)}. Turned over it needs ${showLength(over.leastClearance)}: mirror the cut.`,
                where: relief.where,
                step: relief.index,
                related: [{ message: phrase`It is let in here.`, where: step.where }],
                fixes:
                    isGood && !work && relief.mirror.length === 0
                        ? [
                              {
                                  title: phrase`Mirror ${relief.name}, and turn it over`,
                                  preferred: true,
                                  changes: [sayMirror(relief)],
                              },
                          ]
                        : [],
            });
        }
    },
};
