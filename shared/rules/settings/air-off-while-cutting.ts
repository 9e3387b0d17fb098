import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'air-off-while-cutting',
    title: 'Air off while cutting',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'A cut runs with the air assist off.',
    why: 'Without the jet, smoke and flame stand in the kerf: the edge chars, the lens gets dirty, and the wood may catch fire.',
    mend: 'Write `air on` in cuts, or leave it out: a cut runs with the air on.',
    source: commonPractice,
};

export const airOffWhileCutting: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'cut' || step.air?.value !== 'off') continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`The air is off while ${step.name} is cut: smoke and flame stay in the kerf.`,
                where: step.air.where,
                step: step.index,
                fixes: [
                    {
                        title: phrase`Turn the air on`,
                        preferred: true,
                        changes: [{ do: 'replace', where: step.air.where, text: 'air on' }],
                    },
                ],
            });
        }
    },
};
