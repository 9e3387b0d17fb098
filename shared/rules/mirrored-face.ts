import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'mirrored-face',
    title: 'Mirrored, but never turned over',
    condition: 'An engraving is mirrored, and no inlay uses it as its veneer half.',
    why: 'Its face stays up, so the mirror image is what is seen. Lettering then reads backwards.',
    mend: 'Take `mirror` out, unless the mirror image is wanted.',
    source: commonPractice,
};

export const mirroredFace: Rule = {
    page,
    *examine(plan) {
        const halves = new Set(
            plan.recipe.steps.flatMap((step) => (step.kind === 'inlay' ? [step.relief.value, step.pocket.value] : [])),
        );
        for (const { step, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser?.mirrorAxis === undefined || halves.has(step.name)) continue;
            if (laser.through) continue; // a veneer half whose inlay has not been written yet
            yield finding(page, {
                severity: 'hint',
                message: `${step.name} is mirrored, but it is not turned over for any inlay: its mirror image stays in sight.`,
                where: step.mirror[0]!,
                step: step.index,
                fixes: [{ title: 'Do not mirror', changes: [{ do: 'remove', where: step.mirror[0]! }] }],
            });
        }
    },
};
