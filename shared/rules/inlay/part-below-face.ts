import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'part-below-face',
    title: 'Part thinner than the board it goes through',
    severities: ['warning'],
    condition: 'A part is let into a cut-through opening of a board that is thicker than the part, whatever their tolerances.',
    why: 'Nothing carries it. On the bench it drops to the back of the board, and the glue sets with its face sunken by the difference.',
    mend: 'Cut the part from stock as thick as the board. Or lay packing of the difference under it, and say so with `allow part-below-face because "…"`.',
    source: 'Plain arithmetic.',
};

export const partBelowFace: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay?.veneer === undefined || inlay.pocket.kind !== 'cut') continue;
            const { relief, veneer, pocketLaser } = inlay;
            const board = plan.blanks.find(({ name }) => name === pocketLaser.blank)?.thickness;
            if (board === undefined || veneer.high >= board.low - leastStep) continue;
            const short = board.value - veneer.value;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${relief.name} is ${showLength(veneer.value)} thick, and ${pocketLaser.blank} around its opening ${showLength(board.value)}: with nothing under it it sinks ${showLength(short)} below the face. Lay ${showLength(short)} of packing under it, or cut it from stock as thick as the board.`,
                where: step.where,
                step: step.index,
                related: [{ message: phrase`The opening is cut here.`, where: inlay.pocket.where }],
            });
        }
    },
};

/** Less than this is sanded off, mm. @commonPractice */
const leastStep = 0.05;
