import { pieceAtEnd } from '../helpers/piece-at';
import { sandFlush } from '../helpers/sand-flush';
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
            const piece = pieceAtEnd(plan, blank.name);
            const proud = piece?.marks.filter((mark) => (mark.content?.proud ?? 0) > 0.01) ?? [];
            const last = proud[proud.length - 1];
            const step = last?.content === undefined ? undefined : plan.steps[last.content.step]?.step;
            if (piece === undefined || step === undefined) continue;
            const names = proud.map((mark) => (mark.content?.kind === 'resin' ? mark.content.name : mark.content?.from));
            yield finding(page, {
                severity: 'info',
                message: `${[...new Set(names)].join(' and ')} still stand${names.length === 1 ? 's' : ''} above the face of ${blank.name} at the end: nothing sands it flush.`,
                where: step.where,
                step: step.index,
                fixes: sandFlush(
                    plan,
                    blank.name,
                    proud.flatMap(({ content }) => content ?? []),
                ),
            });
        }
    },
};
