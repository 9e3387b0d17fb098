import { subtract } from '../quantity/interval';
import { showLength } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

/** Least fill that should be left after sanding, mm: common practice, no source. */
const leastLeft = 0.2;

const page: Page = {
    id: 'fill-sanded-away',
    title: 'Sanding takes the fill away',
    condition: `After sanding, less than ${leastLeft} mm of a fill is left, or none at all, with depth and sanding at the bad end.`,
    why: 'Sanding takes the spilled resin and the scorch off the face, and as much off the fill. A skin of resin is see-through and chips out.',
    mend: 'Engrave deeper than the finished depth, or sand less off the face.',
    source: commonPractice,
};

export const fillSandedAway: Rule = {
    page,
    *examine(plan) {
        for (const [index, { step, blank, sand }] of plan.steps.entries()) {
            if (sand === undefined || step.kind !== 'sand' || sand.below.value <= 0) continue;
            const before = plan.frames[index]?.find((piece) => piece.blank === blank);
            const face = plan.frames[index + 1]?.find((piece) => piece.blank === blank)?.face;
            if (before === undefined || face === undefined) continue;
            for (const mark of before.marks) {
                if (mark.kind === 'toned' || mark.content?.kind !== 'resin') continue; // shallow-fill says it
                const left = subtract(mark.depth, face);
                if (left.low >= leastLeft) continue;
                const gone = left.value <= 0;
                const carved = plan.steps[mark.step]?.step;
                const name = carved !== undefined && 'name' in carved ? carved.name : 'the pocket';
                yield finding(page, {
                    severity: gone ? 'error' : 'warning',
                    message: gone
                        ? `Sanding takes ${showLength(sand.below.value)} off the face; ${name} is ${showLength(mark.depth.value)} deep, so all of ${mark.content.name} goes.`
                        : `After sanding ${showLength(left.value)} of ${mark.content.name} is left in ${name}, ${showLength(Math.max(0, left.low))} at worst; ${showLength(leastLeft)} should stay.`,
                    where: step.take?.where ?? step.where,
                    step: step.index,
                    related: carved === undefined ? [] : [{ message: `${name} is engraved here.`, where: carved.where }],
                });
            }
        }
    },
};
