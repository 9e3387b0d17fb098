import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Grits from this number on only take the nibs off between coats. @commonPractice */
const betweenCoats = 240;

const page: Page = {
    id: 'finish-before-sanding',
    title: 'Finished before it is sanded',
    severities: ['warning'],
    quickFix: 'always',
    condition: `A finish goes on a blank, and later the blank is sanded to shape (flush, by a depth, or with a grit coarser than ${betweenCoats}).`,
    why: 'Sanding takes the finish off again in patches, clogs the paper, and what is left in the pores shows under the next coat.',
    mend: 'Sand first and finish last. Fine sanding between coats, without a depth, is another matter and is let pass.',
    source: commonPractice,
};

export const finishBeforeSanding: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, face } of plan.steps) {
            if (step.kind !== 'finish') continue;
            const sandings = plan.steps.filter((other) => {
                if (other.step.kind !== 'sand' || other.face !== face || other.step.index < step.index) return false;
                const coarse = other.sand?.grits.some((grit) => grit < betweenCoats) ?? false;
                return other.step.flush || (other.sand?.below.value ?? 0) > 0 || coarse;
            });
            const [sand] = sandings;
            if (sand === undefined || blank === undefined) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${blank} is finished with ${step.coat?.name ?? phrase`a coat`} before it is sanded: the sanding takes the finish off again.`,
                where: step.where,
                step: step.index,
                related: [{ message: phrase`It is sanded here.`, where: sand.step.where }],
                fixes: [
                    {
                        title: phrase`Sand first`,
                        preferred: true,
                        // The finish goes behind the sanding: moved forward, that would come before what has to cure first.
                        changes: [{ do: 'move', statement: step.whole, after: sandings.at(-1)!.step.whole }],
                    },
                ],
            });
        }
    },
};
