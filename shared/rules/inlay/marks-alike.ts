import { roundOrder } from '../../geometry/symmetry';
import { keptFor } from '../../plan/kept';
import { Memo } from '../../plan/memo';
import type { InlayPlan, Plan } from '../../plan/plan';
import { findMarks } from '../../plan/plan-marks';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';
import { burntKey } from './marks-no-room';

/** Few enough to lay the halves together by, the best first; one by itself tells a turn, but not whether it lies straight. */
const tried = [3, 4, 5, 1];

const page: Page = {
    id: 'marks-alike',
    title: 'Marks that fit in more than one turn',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'The art of an inlay looks the same in more than one turn, and in one of those turns its marks come to lie on each other to within their own width.',
    why: 'The marks are there to tell which turn is right. Two that stand opposite each other let the halves lie together the wrong way round.',
    mend: 'Ask for three marks, or take a larger veneer blank, so that they find places which no other turn brings together.',
    source: commonPractice,
};

export const marksAlike: Rule = {
    page,
    *examine(plan) {
        for (const { step, inlay } of plan.steps) {
            const marks = inlay?.marks;
            if (step.kind !== 'inlay' || inlay === undefined || marks?.apart === undefined || marks.placed === 0) continue;
            if (marks.apart >= marks.diameter) continue;
            const { turns } = inlay.symmetry;
            const art = turns >= roundOrder ? phrase`is round` : phrase`looks the same in ${turns} ways round`;
            const fix = moreMarks(plan, inlay, step);
            yield finding(page, {
                severity: 'warning',
                message: phrase`${inlay.pocket.name} ${art}, and its ${marks.placed} marks come to lie on each other in more than one of its turns: they do not tell which is right.${fix === undefined ? phrase` There is no room for any that would.` : ''}`,
                where: step.marks?.where ?? step.where,
                step: step.index,
                fixes: fix === undefined ? [] : [fix],
            });
        }
    },
};

/** The least number of marks that have room and tell the turns apart. */
function moreMarks(plan: Plan, inlay: InlayPlan, step: Inlay): Fix | undefined {
    const size = (name: string) => plan.blanks.find((blank) => blank.name === name)?.size;
    const [relief, pocket] = [size(inlay.reliefLaser.blank), size(inlay.pocketLaser.blank)];
    if (relief === undefined || pocket === undefined || step.marks === undefined) return undefined;
    const sheets = { relief: { x: 0, y: 0, ...relief }, pocket: { x: 0, y: 0, ...pocket } };
    const key = `telling marks ${step.index} ${JSON.stringify(sheets)} ${burntKey(plan)}`;
    const enough = keptFor(inlay.turned, key, () =>
        tried.find((wanted) => {
            const { marks } = findMarks({ inlay, index: step.index, wanted, sheets }, plan.steps, new Memo());
            return marks.placed >= wanted && (marks.apart ?? marks.diameter) >= marks.diameter;
        }),
    );
    if (enough === undefined) return undefined;
    return {
        title: phrase`Ask for ${enough} mark${enough === 1 ? '' : 's'}`,
        preferred: true,
        changes: [{ do: 'replace', where: step.marks.where, text: `marks ${enough}` }],
    };
}
