import { jumps, widestJump } from '../../bench/sanding-sequence';
import { showNumber } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { gritsThatServe } from '../helpers/grits-that-serve';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'grit-jump',
    title: 'Grits that jump',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `The grains of one grit are more than ${widestJump} times as coarse as those of the next, which is more than one grit skipped.`,
    why: 'The finer paper takes far too long to reach the floor of the coarser one’s scratches. They stay, and the finish brings them out.',
    mend: 'Put a grit in between. One may be skipped at a time.',
    source: `Skipping one grit at a time is craft guidance (seen; no standard found). Grains are medians of FEPA 43-1 (some from memory). The ratio is ${commonPractice.toLowerCase()}`,
};

export const gritJump: Rule = {
    page,
    *examine(plan) {
        for (const step of plan.recipe.steps) {
            if (step.kind !== 'sand' || step.gritsWhere === undefined) continue;
            const known = step.grits.every((grit) => grit.grain !== undefined && grit.grain.value > 0);
            if (!known) continue;
            const found = jumps(step.grits.map((grit) => grit.grain!.value));
            if (found.length === 0) continue;
            const first = found[0]!;
            const from = step.grits[first.from]!;
            const to = step.grits[first.to]!;
            yield finding(page, {
                severity: 'warning',
                message: phrase`From ${from.name} to ${to.name} the grain becomes ${showNumber(first.ratio, 1)} times as fine: the scratches of the ${from.name} stay.`,
                where: step.gritsWhere,
                step: step.index,
                fixes: gritsThatServe(step),
            });
        }
    },
};
