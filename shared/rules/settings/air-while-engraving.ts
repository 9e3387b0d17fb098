import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'air-while-engraving',
    title: 'Air on while engraving',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'An engraving runs with the air assist on.',
    why: 'The jet drives soot into the open grain and leaves char along the edges.',
    mend: 'Leave `air` out of engravings, or write `without air`; keep it for cutting through.',
    source: commonPractice,
};

export const airWhileEngraving: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'engrave' || step.air?.value !== 'on') continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`The air is on while ${step.name} is engraved: it drives soot into the burn and chars the edges.`,
                where: step.air.where,
                step: step.index,
                fixes: [
                    {
                        title: phrase`Turn the air off`,
                        preferred: true,
                        changes: [{ do: 'replace', where: step.air.where, text: 'without air' }],
                    },
                ],
            });
        }
    },
};
