import { showLength, showLengthInterval } from '../quantity/show';
import { askDepth, depthUnit } from './ask-depth';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';
import { depthForVeneer } from './veneer-depth';

/** Share of the veneer that has to sit in the pocket to lock and to be sanded flush: common practice, no source. */
const leastSeated = 0.5;

const page: Page = {
    id: 'veneer-proud',
    title: 'Veneer stands proud, or lies sunken',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'Less than half of the veneer’s thickness sits in the pocket, or its face lies below the board’s and sanding does not reach it.',
    why: 'In too shallow a pocket the parts do not lock, and most of the veneer is sanded away again. Sunken, its face stays dirty and its edges stay round.',
    mend: 'Make the pocket as deep as veneer and glue film together, less a tenth or two for flush sanding.',
    source: `${commonPractice} The height is veneer − (depth − glue film).`,
};

export const veneerProud: Rule = {
    page,
    *examine(plan) {
        for (const { inlay } of plan.steps) {
            const { stack, veneer, pocketLaser } = inlay ?? {};
            if (inlay === undefined || stack === undefined || veneer === undefined || pocketLaser?.depth === undefined) continue;
            if (pocketLaser.through) continue; // pocket-without-floor says it
            const wish = inlay.pocket.depth;
            const where = wish?.where ?? inlay.pocket.where;
            const proud = stack.proud.likely;
            const right = depthForVeneer(inlay);
            const mend = right === undefined ? '' : `; it wants a depth of ${showLength(right, depthUnit(inlay.pocket))}`;
            const fixes = right === undefined ? [] : askDepth(inlay.pocket, right);
            const sums = `${showLength(veneer.value)} veneer less ${showLength(pocketLaser.depth.value)} of depth, plus ${showLength(inlay.film.value)} of glue`;
            if (proud.value > veneer.value * (1 - leastSeated)) {
                yield finding(page, {
                    severity: 'warning',
                    message: `The veneer stands ${showLengthInterval(proud)} proud (${sums}): less than half of it sits in the pocket${mend}.`,
                    where,
                    step: inlay.pocket.index,
                    fixes,
                });
                continue;
            }
            const reached = plan.steps.reduce(
                (sum, other) =>
                    sum + (other.sand !== undefined && other.blank === pocketLaser.blank ? other.sand.below.value : 0),
                0,
            );
            if (proud.high < -reached) {
                yield finding(page, {
                    severity: 'warning',
                    message: `The veneer lies ${showLength(-proud.value)} below the face (${sums}), and sanding takes only ${showLength(reached)} off the board${mend}.`,
                    where,
                    step: inlay.pocket.index,
                    fixes,
                });
            }
        }
    },
};
