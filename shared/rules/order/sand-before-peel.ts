import { phrase } from '../../recipe/phrase';
import type { Peel } from '../../recipe/step';
import { peelFirst } from '../helpers/peel-first';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'sand-before-peel',
    title: 'Sanded with the backing still on',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'A blank is sanded while the inlay in it still has its foil or tape on.',
    why: 'The veneer half was turned over: its backing lies on top. Sanding meets foil and adhesive first, and rubs both into the wood.',
    mend: 'Peel the backing off before sanding.',
    source: commonPractice,
};

export const sandBeforePeel: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank } of plan.steps) {
            if (step.kind !== 'sand') continue;
            for (const piece of plan.faces[step.index] ?? []) {
                if (piece.inside === undefined || piece.inside !== blank || !piece.backed) continue;
                const later = plan.recipe.steps.find(
                    (other): other is Peel =>
                        other.kind === 'peel' && other.blank.value === piece.blank && other.index > step.index,
                );
                const backing = plan.blanks.find((candidate) => candidate.name === piece.blank)?.blank.backing ?? 'tape';
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${blank} is sanded while the ${backing} is still on ${piece.blank}.`,
                    where: step.where,
                    step: step.index,
                    related: later === undefined ? [] : [{ message: phrase`It is peeled only here.`, where: later.where }],
                    fixes: [
                        {
                            title: phrase`Peel ${piece.blank} first`,
                            preferred: true,
                            changes: peelFirst(plan, piece.blank, step, later),
                        },
                    ],
                });
            }
        }
    },
};
