import { holes, islands } from '../../geometry/islands';
import { layersAbove } from '../../piece/column';
import { phrase } from '../../recipe/phrase';
import { faceAfter } from '../helpers/face-at';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Pieces of tape that a person takes off one by one without losing patience. @commonPractice */
const mostPieces = 150;

const page: Page = {
    id: 'many-to-weed',
    title: 'Many pieces of tape to take off',
    severities: ['info'],
    condition: `The beam cuts masking tape into more than ${mostPieces} pieces that have to come off one by one.`,
    why: 'Each stays behind when the tape is pulled off and has to be picked out with a blade, which scratches.',
    mend: 'Mask only where it is needed, leave small dots and dashes out of the art, or burn them without the mask.',
    source: commonPractice,
};

export const manyToWeed: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser === undefined || laser.pictures !== undefined) continue;
            const met = faceAfter(plan, step.index, blank)?.met ?? [];
            const taped = met.some(({ column }) => layersAbove(column).some(({ kind }) => kind === 'tape'));
            // What is burnt is gone; what it encloses stays behind as a piece.
            const pieces = taped ? holes(laser.region).length : 0;
            if (pieces <= mostPieces) continue;
            yield finding(page, {
                severity: 'info',
                message: phrase`${step.name} leaves ${pieces} pieces of tape inside of its ${islands(laser.region).length} shapes, to be taken off one by one: burn it before ${blank ?? phrase`the blank`} is masked, or leave small shapes out.`,
                where: step.where,
                step: step.index,
            });
        }
    },
};
