import { phrase } from '../../recipe/phrase';
import { blankOf } from '../helpers/blank-names';
import { faceBefore } from '../helpers/face-at';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'flipped-on-backing',
    title: 'Turned over with its backing on',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'A blank is flipped while the foil or tape that it is stuck to is still on.',
    why: 'The backing lies on top then: what is burnt, sanded or laid on the back goes into it and not into the wood.',
    mend: 'Peel it first. Parts that were cut on it are loose then: what is burnt on their backs comes before they are cut, or they keep tabs.',
    source: 'Plain geometry of turning over.',
};

export const flippedOnBacking: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step } = stepPlan;
            const blank = step.kind === 'flip' ? blankOf(plan, stepPlan) : undefined;
            if (blank === undefined || faceBefore(plan, step.index, blank.name)?.backed !== true) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${blank.name} is still stuck to its ${blank.blank.backing} when it is flipped: the ${blank.blank.backing} covers its back. Peel it first.`,
                where: step.where,
                step: step.index,
                fixes: [
                    {
                        title: phrase`Peel ${blank.name} first`,
                        preferred: true,
                        changes: [statementBefore(step, `peel ${blank.name}`)],
                    },
                ],
            });
        }
    },
};
