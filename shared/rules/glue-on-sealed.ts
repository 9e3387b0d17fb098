import { commonPractice, type Page } from './page';
import { markOf, pieceBefore } from './piece-at';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'glue-on-sealed',
    title: 'Wood glue on sealed wood',
    severities: ['warning'],
    condition: 'A pocket is sealed before an inlay is glued into it with a water-based wood glue.',
    why: 'Wood glue holds by soaking into the wood. On a sealed floor it dries to a skin, and the inlay lifts.',
    mend: 'Glue first and seal afterwards, mask the pocket while sealing, or use an epoxy glue.',
    source: commonPractice,
};

export const glueOnSealed: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, inlay } of plan.steps) {
            if (step.kind !== 'inlay' || inlay === undefined || (step.glue?.kind ?? step.glue?.name) !== 'wood-glue') continue;
            if (markOf(pieceBefore(plan, step.index, blank), inlay.pocket.index)?.sealed !== true) continue;
            const seal = plan.steps.find(
                (other) =>
                    other.step.kind === 'seal' &&
                    other.blank === blank &&
                    other.step.index > inlay.pocket.index &&
                    other.step.index < step.index,
            );
            yield finding(page, {
                severity: 'warning',
                message: `${inlay.pocket.name} is sealed before ${step.glue?.name} goes into it: the glue does not soak in, and does not hold.`,
                where: step.where,
                step: step.index,
                related: seal === undefined ? [] : [{ message: 'It is sealed here.', where: seal.step.where }],
            });
        }
    },
};
