import { isMasked } from '../../piece/face';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { contentsOf } from '../helpers/contents';
import { faceAfter, faceBefore } from '../helpers/face-at';
import { leastTaken, takeATenth } from '../helpers/sanding-off';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'leaves-scorch',
    title: 'Sanding leaves the scorch',
    severities: ['info'],
    quickFix: 'sometimes',
    condition: `A face with a fill or an inlay is sanded flush, but less than ${leastTaken} mm comes off the wood itself, and it was not masked while it was burnt.`,
    why: 'The laser scorches the rim and smokes the face around it, and spilled resin stains the outermost fibres. Sanding flush alone stops where that begins.',
    mend: 'Take a tenth of a millimetre off the face as well, with `flush then 0.1 mm`, and engrave that much deeper; or mask the blank before it is burnt.',
    source: commonPractice,
};

export const leavesScorch: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const [index, { step, blank, face, sand }] of plan.steps.entries()) {
            if (step.kind !== 'sand' || sand === undefined || !step.flush) continue;
            const laterSand = plan.steps.some(
                (other) => other.step.kind === 'sand' && other.face === face && other.step.index > index,
            );
            if (laterSand) continue;
            const filled = contentsOf(plan, faceBefore(plan, index, blank)).find(({ pocket }) => {
                const burnt = faceBefore(plan, pocket, blank);
                return burnt !== undefined && !isMasked(burnt);
            });
            const burntAt = filled === undefined ? 0 : (faceBefore(plan, filled.pocket, blank)?.level.value ?? 0);
            const taken = (faceAfter(plan, index, blank)?.level.value ?? 0) - burntAt;
            if (filled === undefined || taken >= leastTaken) continue;
            yield finding(page, {
                severity: 'info',
                message: phrase`${taken > 0 ? phrase`Only ${showLength(taken)}` : 'Nothing'} comes off the face of ${blank} itself: scorch and spilled resin stay around ${plan.steps[filled.pocket]?.title.replace(/^Engrave /, '')}; a tenth of a millimetre takes them off.`,
                where: step.take?.where ?? step.where,
                step: step.index,
                fixes: takeATenth(page.id, step, figures),
            });
        }
    },
};
