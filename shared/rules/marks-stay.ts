import { showLength } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { pieceAtEnd } from './piece-at';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'marks-stay',
    title: 'Marks stay on the face',
    severities: ['warning'],
    condition: 'The board is not sanded deep enough to take the registration marks of an inlay off its face.',
    why: 'The marks on the board are light discs, as deep as the colour reaches: about 0.08 mm. Less sanding leaves them in sight beside the inlay.',
    mend: 'Sand at least 0.1 mm off the face (`flush then 0.10 mm`), or leave the marks out.',
    source: commonPractice,
};

export const marksStay: Rule = {
    page,
    *examine(plan) {
        for (const { step, inlay } of plan.steps) {
            if (step.kind !== 'inlay' || inlay?.marks === undefined || inlay.marks.placed === 0) continue;
            const piece = pieceAtEnd(plan, inlay.pocketLaser.blank);
            if (piece?.marks.some((mark) => mark.registration === true && mark.step === inlay.pocket.index) !== true) continue;
            yield finding(page, {
                severity: 'warning',
                message: `The marks of ${inlay.pocket.name} stay in sight: only ${showLength(piece.face.value)} comes off the face of ${piece.blank}.`,
                where: step.marks?.where ?? step.where,
                step: step.index,
            });
        }
    },
};
