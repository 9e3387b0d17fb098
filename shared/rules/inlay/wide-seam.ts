import type { InlayPlan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { lengthWithin } from '../helpers/length-within';
import { gapFixes, gapWords, offsetsOf } from '../helpers/mend-gap';
import { betterTurnedOver } from '../helpers/side-up';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Widest seam along an edge that still looks like a joint, mm. @commonPractice */
export const widestSeam = 0.15;
/** More than the walls need, so that a speck of dust does not stop it, mm. @commonPractice */
const ease = 0.03;

const page: Page = {
    id: 'wide-seam',
    title: 'Seam too wide',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `Pressed in and sanded, the veneer leaves a gap of more than ${widestSeam} mm along its edges.`,
    why: 'It shows as a dark line of glue around every part, and thin glue does not bridge it.',
    mend: 'Give less clearance, but no less than lets the veneer reach the floor; or take an `offset` out that makes the gap wider.',
    source: `${commonPractice} The seam is the clearance less what both walls take up at the height of the sanded face, as in the press of both halves.`,
};

export const wideSeam: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay?.fit === undefined || step.kind !== 'inlay') continue;
            const { seam, bottoms, leastClearance, closing } = inlay.fit;
            if (!bottoms || seam <= widestSeam || betterTurnedOver(inlay, widestSeam) !== undefined) continue;
            const most = closing + widestSeam;
            const wanted = { low: leastClearance, high: most, best: Math.min(leastClearance + ease, most) };
            const fixes = gapFixes(inlay, step, wanted);
            const enough = lengthWithin(wanted, step.clearance?.unit ?? 'mm');
            const mend =
                enough === undefined
                    ? phrase` The walls lean so differently that less than ${showLength(leastClearance)} would stop it before the floor.`
                    : phrase` These walls need ${showLength(leastClearance)}; ${enough.text} is enough.`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`With ${gapWords(inlay, step)} a seam of ${showLength(seam)} stays open along every edge${inlay.below.value > 0 ? phrase` after sanding` : ''}; more than ${showLength(widestSeam)} shows.${mend}`,
                where: widened(inlay, step),
                step: step.index,
                fixes,
            });
        }
    },
};

/** What is written that makes it so wide. */
function widened(inlay: InlayPlan, { clearance, where }: Inlay): Where {
    const grown = [inlay.pocket, inlay.relief].find(({ offset }) => (offset?.value ?? 0) > 0);
    if (clearance !== undefined && (grown === undefined || inlay.clearance >= offsetsOf(inlay))) return clearance.where;
    return grown?.offset?.where ?? where;
}
