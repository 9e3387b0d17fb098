import { showLength, showNumber } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

/** Widest seam along an edge that still looks like a joint, mm: common practice, no source. */
const widest = 0.15;

const page: Page = {
    id: 'wide-seam',
    title: 'Seam too wide',
    condition: `Pressed in, the veneer leaves a gap of more than ${widest} mm along its edges.`,
    why: 'It shows as a dark line of glue around every part, and thin glue does not bridge it.',
    mend: 'Give less clearance, but no less than lets the veneer reach the floor.',
    source: `${commonPractice} The seam is c − h · tan(lean).`,
};

export const wideSeam: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay?.fit === undefined || step.kind !== 'inlay' || step.clearance === undefined) continue;
            const { seam, bottoms, leastClearance } = inlay.fit;
            if (!bottoms || seam <= widest) continue;
            const right = `${showNumber(Math.ceil((leastClearance + 0.03) * 100) / 100, 2)} mm`;
            yield finding(page, {
                severity: 'warning',
                message: `A seam of ${showLength(seam)} stays open along every edge; more than ${showLength(widest)} shows.`,
                where: step.clearance.where,
                step: step.index,
                fixes: [
                    {
                        title: `Give ${right} of clearance`,
                        changes: [{ do: 'replace', where: step.clearance.where, text: right }],
                    },
                ],
            });
        }
    },
};
