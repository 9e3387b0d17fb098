import { showRatio } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { blankOf, materialName } from '../helpers/blank-names';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Difference of moisture that opens joints later. @commonPractice */
const most = 0.03;

const page: Page = {
    id: 'moisture-mismatch',
    title: 'Board and veneer of different moisture',
    severities: ['warning'],
    condition: `Board and veneer of an inlay differ by ${most * 100} % of moisture or more when they are joined.`,
    why: 'In the same room both come to the same moisture. The wetter one shrinks after the joint is made, and the seam opens.',
    mend: 'Keep both in the same room for some weeks before the work, and measure again.',
    source: commonPractice,
};

export const moistureMismatch: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { inlay, step } = stepPlan;
            if (inlay === undefined) continue;
            const board = blankOf(plan, stepPlan);
            const veneer = plan.blanks.find((blank) => blank.name === inlay.reliefLaser.blank);
            const [one, other] = [board?.blank.sheet?.moisture, veneer?.blank.sheet?.moisture];
            if (board === undefined || veneer === undefined || one === undefined || other === undefined) continue;
            if (Math.abs(one.value - other.value) < most - 1e-9) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${materialName(board)} has ${showRatio(one.value)} of moisture and ${materialName(veneer)} ${showRatio(other.value)}, which is ${showRatio(most)} or more apart: the wetter one shrinks once they are joined, and the seam opens. Keep both in one room until they are alike.`,
                where: step.where,
                step: step.index,
                related: [
                    { message: phrase`The board’s moisture is written here.`, where: one.where },
                    { message: phrase`The veneer’s moisture is written here.`, where: other.where },
                ],
            });
        }
    },
};
