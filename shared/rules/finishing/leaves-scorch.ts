import { showLength } from '../../quantity/show';
import { atItsWord } from '../figures';
import { pieceBefore } from '../helpers/piece-at';
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
        for (const [index, { step, blank, sand }] of plan.steps.entries()) {
            if (step.kind !== 'sand' || sand === undefined || !step.flush) continue;
            const laterSand = plan.steps.some(
                (other) => other.step.kind === 'sand' && other.blank === blank && other.step.index > index,
            );
            if (laterSand) continue;
            const piece = pieceBefore(plan, index, blank);
            const filled = piece?.marks.find(
                (mark) => mark.content !== undefined && pieceBefore(plan, mark.step, blank)?.masked === false,
            );
            const face = pieceBefore(plan, index + 1, blank)?.face.value ?? 0;
            const burntAt = filled === undefined ? 0 : (pieceBefore(plan, filled.step, blank)?.face.value ?? 0);
            const taken = face - burntAt;
            if (filled === undefined || taken >= leastTaken) continue;
            yield finding(page, {
                severity: 'info',
                message: `${taken > 0 ? `Only ${showLength(taken)}` : 'Nothing'} comes off the face of ${blank} itself: scorch and spilled resin stay around ${plan.steps[filled.step]?.title.replace(/^Engrave /, '')}; a tenth of a millimetre takes them off.`,
                where: step.take?.where ?? step.where,
                step: step.index,
                fixes: takeATenth(page.id, step, figures),
            });
        }
    },
};
