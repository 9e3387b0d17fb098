import { subtract } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import { atItsWord } from '../figures';
import { askDepth, depthUnit } from '../helpers/ask-depth';
import { depthForFill, leastFillLeft as leastLeft } from '../helpers/fill-depth';
import { sandLess } from '../helpers/sanding-off';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'fill-sanded-away',
    title: 'Sanding takes the fill away',
    severities: ['warning', 'error'],
    quickFix: 'sometimes',
    condition: `After sanding, less than ${leastLeft} mm of a fill is left, or none at all, with depth and sanding at the bad end.`,
    why: 'Sanding takes the spilled resin and the scorch off the face, and as much off the fill. A skin of resin is see-through and chips out.',
    mend: 'Engrave deeper than the finished depth, or sand less off the face.',
    source: commonPractice,
};

export const fillSandedAway: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const [index, { step, blank, sand }] of plan.steps.entries()) {
            if (sand === undefined || step.kind !== 'sand' || sand.below.value <= 0) continue;
            const before = plan.frames[index]?.find((piece) => piece.blank === blank);
            const face = plan.frames[index + 1]?.find((piece) => piece.blank === blank)?.face;
            if (before === undefined || face === undefined) continue;
            for (const mark of before.marks) {
                if (mark.kind === 'toned' || mark.content?.kind !== 'resin') continue; // shallow-fill says it
                const laser = plan.steps[mark.step]?.laser;
                if (laser?.depth === undefined) continue; // nobody knows how deep it is
                const left = subtract(mark.depth, face);
                if (left.low >= leastLeft) continue;
                const gone = left.value <= 0;
                const carved = plan.steps[mark.step]?.step;
                const name = carved !== undefined && 'name' in carved ? carved.name : 'the pocket';
                const engraved = carved?.kind === 'engrave' ? carved : undefined;
                const deep = engraved === undefined ? undefined : depthForFill(plan, engraved, laser);
                const unit = engraved === undefined ? 'mm' : depthUnit(engraved);
                const { text, fixes, instead } =
                    engraved === undefined ? { fixes: [], instead: '' } : askDepth(page.id, engraved, deep, plan, figures);
                const mend = `${text === undefined ? '' : `; ${text} deep would leave enough`}.${instead}`;
                yield finding(page, {
                    severity: gone ? 'error' : 'warning',
                    message: gone
                        ? `Sanding takes ${showLength(face.value)} off the face in all, and ${name} is ${showLength(mark.depth.value, unit)} deep: all of ${mark.content.name} goes${mend}`
                        : `After sanding ${showLength(left.value)} of ${mark.content.name} is left in ${name}, ${showLength(Math.max(0, left.low))} at worst; ${showLength(leastLeft)} should stay${mend}`,
                    where: step.take?.where ?? step.where,
                    step: step.index,
                    fixes: [...fixes, ...sandLess(page.id, step, leastLeft - left.low, figures)],
                    related: carved === undefined ? [] : [{ message: `${name} is engraved here.`, where: carved.where }],
                });
            }
        }
    },
};
