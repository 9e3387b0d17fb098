import { area } from '../../geometry/measure';
import { hair, scorchDepth } from '../../piece/column';
import { isMarkOf } from '../../plan/found-place';
import type { Plan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceAfter, faceBefore, negligible } from '../helpers/face-at';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'tone-sanded-away',
    title: 'Sanding takes the colour away',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A face is sanded after an engraving has coloured it, deeper than the colour reaches. Marks by which a blank is found again (`found by marks of`) have done their work by then; `mark-gone` speaks where they have not.',
    why: 'A mere colour lies in the outermost tenth of a millimetre. Sanding for anything else on the same face takes it along.',
    mend: 'Sand first and colour last, or give the engraving a depth.',
    source: `${commonPractice} Colour is taken to reach ${scorchDepth} mm.`,
};

export const toneSandedAway: Rule = {
    page,
    *examine(plan) {
        for (const [index, { step, blank, sand }] of plan.steps.entries()) {
            if (step.kind !== 'sand' || sand === undefined) continue;
            for (const [tone, taken] of lostColours(plan, index, blank)) {
                const toned = plan.steps[tone]?.step;
                if (toned?.kind !== 'engrave' || plan.steps[tone]?.laser?.tone === undefined || isMarkOf(plan.recipe, toned.name))
                    continue;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`Sanding takes ${showLength(taken)} off the face that ${toned.name} was burnt into, and with it its colour.`,
                    where: step.take?.where ?? step.where,
                    step: step.index,
                    related: [{ message: phrase`${toned.name} is coloured here.`, where: toned.where }],
                    fixes: plan.steps.some((other) => other.blank === blank && (other.fill ?? other.inlay) !== undefined)
                        ? [] // what is filled has to be sanded afterwards
                        : [
                              {
                                  title: phrase`Sand before ${toned.name}`,
                                  changes: [{ do: 'move', statement: step.whole, before: toned.whole }],
                              },
                          ],
                });
            }
        }
    },
};

/** Steps whose colour a sanding takes off, and how much it takes there, mm: what lies on the floor of a pocket stays. */
function lostColours(plan: Plan, sand: number, blank: string | undefined): Map<number, number> {
    const level = faceAfter(plan, sand, blank)?.level.value ?? 0;
    const areas = new Map<number, number>();
    const takes = new Map<number, number>();
    for (const { region, column } of faceBefore(plan, sand, blank)?.cells ?? []) {
        const taken = level - (column.tonedAt ?? 0);
        if (column.tone === undefined || taken < scorchDepth - hair) continue;
        areas.set(column.tone, (areas.get(column.tone) ?? 0) + area(region));
        takes.set(column.tone, Math.max(takes.get(column.tone) ?? 0, taken));
    }
    return new Map([...takes].filter(([tone]) => areas.get(tone)! > negligible));
}
