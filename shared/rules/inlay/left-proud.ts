import { phrase } from '../../recipe/phrase';
import { contentsOf } from '../helpers/contents';
import { faceAtEnd } from '../helpers/face-at';
import { sandFlush } from '../helpers/sand-flush';
import { settleBySquare } from '../helpers/settle-by-square';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'left-proud',
    title: 'Left standing proud',
    severities: ['info'],
    quickFix: 'sometimes',
    condition: 'A fill or an inlay still stands above the face when the last step is done.',
    why: 'It is felt, catches light and cloth, and is worn off at its edges first.',
    mend: 'Sand the blank flush once the fill or the glue has cured.',
    source: commonPractice,
};

export const leftProud: Rule = {
    page,
    *examine(plan) {
        for (const blank of plan.blanks) {
            const face = faceAtEnd(plan, blank.name);
            if (face === undefined) continue;
            const proud = contentsOf(plan, face).filter(({ places }) =>
                places.some(({ cell }) => face.level.value - cell.column.top.value > 0.01),
            );
            const step = plan.steps[proud[proud.length - 1]?.step ?? -1]?.step;
            if (step === undefined) continue;
            // At the deep end of its range the pocket would take it in.
            const pocket = plan.steps[step.index]?.inlay?.pocketLaser;
            const isOpen = proud.some(({ places }) => places.some(({ cell }) => face.level.value - cell.column.top.high <= 0.01));
            const settled = pocket !== undefined && isOpen ? settleBySquare(plan, pocket) : { words: '', fixes: [] };
            const names = proud.map(({ name }) => name);
            yield finding(page, {
                severity: 'info',
                message: phrase`${[...new Set(names)].join(' and ')} still stand${names.length === 1 ? 's' : ''} above the face of ${blank.name} at the end: nothing sands it flush.${settled.words}`,
                where: step.where,
                step: step.index,
                fixes: [...sandFlush(plan, blank.name, proud), ...settled.fixes],
            });
        }
    },
};
