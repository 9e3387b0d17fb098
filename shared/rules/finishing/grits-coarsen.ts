import { phrase } from '../../recipe/phrase';
import { gritsThatServe } from '../helpers/grits-that-serve';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'grits-coarsen',
    title: 'From a fine grit to a coarser one',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'In one sanding step, a grit is followed by a coarser one.',
    why: 'The coarser paper scratches what the finer one has smoothed.',
    mend: 'Put the grits in order, coarse to fine.',
    source: commonPractice,
};

export const gritsCoarsen: Rule = {
    page,
    *examine(plan) {
        for (const step of plan.recipe.steps) {
            if (step.kind !== 'sand' || step.gritsWhere === undefined) continue;
            const grains = step.grits.map((grit) => grit.grain?.value ?? Number.NaN);
            const back = grains.findIndex((grain, i) => i > 0 && grain > grains[i - 1]!);
            if (back < 1) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`After ${step.grits[back - 1]!.name} comes ${step.grits[back]!.name}, which is coarser and scratches the face again.`,
                where: step.gritsWhere,
                step: step.index,
                fixes: gritsThatServe(step),
            });
        }
    },
};
