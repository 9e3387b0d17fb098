import { phrase } from '../../recipe/phrase';
import type { Ref, Step } from '../../recipe/step';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'out-of-order',
    title: 'Used before it is made',
    severities: ['error'],
    quickFix: 'always',
    condition: 'A fill, an inlay or a check names an engraving that comes only later in the recipe.',
    error: 'Always: what is used is not there yet.',
    why: 'Steps are done in the order in which they are written: a pocket cannot be filled, nor a veneer half let in, before the laser has cut it.',
    mend: 'Move the engraving in front of the step that needs it.',
    source: 'The order of the text is the order of the work.',
};

export const outOfOrder: Rule = {
    page,
    *examine(plan) {
        for (const step of plan.recipe.steps) {
            for (const { ref, said } of needs(step)) {
                const made = plan.recipe.steps.find(
                    (other) => (other.kind === 'engrave' || other.kind === 'cut') && other.name === ref.value,
                );
                if (made === undefined || made.index < step.index) continue;
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${ref.value} ${said} here, but is ${made.kind === 'cut' ? 'cut' : 'engraved'} only later.`,
                    where: ref.where,
                    step: step.index,
                    related: [{ message: phrase`It is ${made.kind === 'cut' ? 'cut' : 'engraved'} here.`, where: made.where }],
                    fixes: [
                        {
                            title: phrase`${made.kind === 'cut' ? 'Cut' : 'Engrave'} ${ref.value} first`,
                            preferred: true,
                            changes: [{ do: 'move', statement: made.whole, before: step.whole }],
                        },
                    ],
                });
            }
        }
    },
};

/** What a step builds on. */
export function needs(step: Step): { ref: Ref; said: string }[] {
    switch (step.kind) {
        case 'fill':
            return [{ ref: step.pocket, said: 'is filled' }];
        case 'inlay':
            return [
                { ref: step.relief, said: 'is let in' },
                { ref: step.pocket, said: 'takes the inlay' },
            ];
        case 'check':
            return [{ ref: step.step, said: 'is measured' }];
        default:
            return [];
    }
}
