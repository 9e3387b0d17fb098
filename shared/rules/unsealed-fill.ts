import { blankOf } from './blank-names';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'unsealed-fill',
    title: 'Filled before it is sealed',
    condition: 'A pocket in a wood that bleeds is filled before the board has been sealed.',
    why: 'Thin resin and its colour run along the open grain, far past the edge, and no sanding takes that back.',
    mend: 'Seal the board after engraving and before filling; a slow epoxy seals best, a wash of clear-drying wood glue does too.',
    source: commonPractice,
};

export const unsealedFill: Rule = {
    page,
    *examine(plan) {
        for (const [index, stepPlan] of plan.steps.entries()) {
            const { fill, step } = stepPlan;
            if (fill === undefined || step.kind !== 'fill') continue;
            const wood = blankOf(plan, stepPlan)?.blank.sheet?.wood;
            if (wood === undefined || !wood.bleeds) continue;
            const mark = plan.frames[index]
                ?.find((piece) => piece.blank === stepPlan.blank)
                ?.marks.find((candidate) => candidate.step === fill.pocket.index);
            if (mark === undefined || mark.sealed) continue;
            const later = plan.steps.find(
                (other) => other.step.kind === 'seal' && other.step.index > index && other.blank === stepPlan.blank,
            );
            yield finding(page, {
                severity: 'warning',
                message: `${wood.name} bleeds${wood.pores === undefined ? '' : ` (${poreWords[wood.pores]})`}: ${step.resin?.name ?? 'the fill'} goes in before anything has sealed ${fill.pocket.name}.`,
                where: step.where,
                step: step.index,
                related: later === undefined ? [] : [{ message: 'It is sealed only here.', where: later.step.where }],
                fixes:
                    later === undefined
                        ? []
                        : [
                              {
                                  title: 'Seal before filling',
                                  preferred: true,
                                  changes: [{ do: 'move', statement: later.step.whole, before: step.whole }],
                              },
                          ],
            });
        }
    },
};

const poreWords = {
    diffuse: 'diffuse pores',
    'semi-ring': 'half ring-porous',
    ring: 'ring-porous',
    softwood: 'a softwood',
} as const;
