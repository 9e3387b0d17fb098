import { roundOrder } from '../../geometry/symmetry';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'round-without-marks',
    title: 'Fits in several positions, without marks',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'The outline of an inlay comes to lie on itself when it is turned, as a disc or a square does, and `marks` is missing.',
    why: 'The pocket then takes the veneer in a wrong position as readily as in the right one. Its grain, or what belongs to it in the drawing, points elsewhere, and that is seen when the glue holds. An irregular outline has one position and needs no marks.',
    mend: 'Write `marks 3` in the inlay. Where no position is wrong, say it: `allow round-without-marks because "a plain disc"`.',
    source: commonPractice,
};

export const roundWithoutMarks: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay === undefined || inlay.relief.kind === 'cut' || step.kind !== 'inlay' || (step.marks?.value ?? 0) > 0)
                continue;
            const { turns } = inlay.symmetry;
            if (turns < 2) continue;
            const how = turns >= roundOrder ? phrase`is round and fits in every position` : phrase`fits in ${turns} positions`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${inlay.pocket.name} ${how}, and no marks say which one is right.`,
                where: step.where,
                step: step.index,
                fixes: [
                    {
                        title: phrase`Add 3 marks`,
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
