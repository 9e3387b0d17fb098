import { roundOrder } from '../geometry/symmetry';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'round-without-marks',
    title: 'Round art without alignment marks',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'An inlay looks the same in more than one turn, and no marks say which is right.',
    why: 'Irregular art finds its own place like a puzzle. Round art goes in any way round, and then grain, or the art around it, does not line up.',
    mend: 'Write `marks 3` in the inlay, or `allow round-without-marks because "any way round will do"`.',
    source: commonPractice,
};

export const roundWithoutMarks: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay === undefined || step.kind !== 'inlay' || (step.marks?.value ?? 0) > 0) continue;
            const { turns } = inlay.symmetry;
            if (turns < 2) continue;
            const how = turns >= roundOrder ? 'is round and goes in any way round' : `goes in ${turns} ways round`;
            yield finding(page, {
                severity: 'warning',
                message: `${inlay.pocket.name} ${how}: marks are needed to tell which is right.`,
                where: step.where,
                step: step.index,
                fixes: [
                    {
                        title: 'Add 3 marks',
                        preferred: true,
                        changes: [
                            step.marks === undefined
                                ? { do: 'add', block: step.whole, statement: 'marks 3' }
                                : { do: 'replace', where: step.marks.where, text: 'marks 3' },
                        ],
                    },
                ],
            });
        }
    },
};
