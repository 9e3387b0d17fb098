import { showLength } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

/** Least veneer that should be left, mm: common practice, no source. */
const leastLeft = 0.2;

const page: Page = {
    id: 'veneer-thin',
    title: 'Veneer left too thin',
    condition: `After all sanding the veneer in the pocket is likely thinner than ${leastLeft} mm, or may be gone at worst.`,
    why: 'Glue shines through, and the next stroke of the sander opens a hole.',
    mend: 'Engrave the pocket deeper, sand less below flush, or use a thicker veneer.',
    source: `${commonPractice} What is left is depth − glue film − what is sanded below flush.`,
};

export const veneerThin: Rule = {
    page,
    *examine(plan) {
        for (const { inlay } of plan.steps) {
            if (inlay?.stack === undefined) continue;
            const { likely, worst } = inlay.stack.left;
            if (likely.low >= leastLeft || (likely.value >= leastLeft && worst.low > 0)) continue;
            const sand = plan.steps.find(
                ({ step, blank }) => step.kind === 'sand' && blank === inlay.pocketLaser.blank && step.take !== undefined,
            );
            const take = sand?.step.kind === 'sand' ? sand.step.take : undefined;
            yield finding(page, {
                severity: likely.value <= 0 ? 'error' : 'warning',
                message:
                    likely.value <= 0
                        ? `Nothing is left of the veneer in ${inlay.pocket.name} after sanding.`
                        : `After sanding ${showLength(likely.value)} of veneer is left in ${inlay.pocket.name}, likely ${showLength(likely.low)} to ${showLength(likely.high)}, ${showLength(worst.low)} at worst; ${showLength(leastLeft)} should stay.`,
                where: take?.where ?? inlay.pocket.depth?.where ?? inlay.pocket.where,
                step: take === undefined ? inlay.pocket.index : sand!.step.index,
                related:
                    inlay.pocket.depth === undefined
                        ? []
                        : [{ message: 'The pocket’s depth is asked for here.', where: inlay.pocket.depth.where }],
            });
        }
    },
};
