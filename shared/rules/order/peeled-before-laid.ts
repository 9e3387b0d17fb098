import { holes } from '../../geometry/islands';
import type { Plan } from '../../plan/plan';
import { phrase } from '../../recipe/phrase';
import type { Peel } from '../../recipe/step';
import { isMaskedAt } from '../helpers/face-at';
import { peelFirst } from '../helpers/peel-first';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'peeled-before-laid',
    title: 'Peeled before it is laid',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'The backing of a veneer half that was burnt into several pieces is peeled off before the half is glued in.',
    why: 'The backing holds the pieces where they belong. Without it each lies loose, and small ones are lost or turned.',
    mend: 'Glue in the half with its backing, and peel once the glue holds.',
    source: commonPractice,
};

export const peeledBeforeLaid: Rule = {
    page,
    *examine(plan) {
        for (const { step, inlay } of plan.steps) {
            if (inlay === undefined) continue;
            const { relief, reliefLaser } = inlay;
            const half = reliefLaser.blank;
            const backed = plan.blanks.find(({ name }) => name === half)?.blank.backing !== 'none';
            const loose = reliefLaser.through ? holes(reliefLaser.region).length : 0;
            if (!backed || loose < 2) continue;
            const peel = plan.steps
                .map((one) => one.step)
                .find((one): one is Peel => isPeelOf(one, half, relief.index, step.index));
            // A mask on its face is peeled by the same word.
            if (peel === undefined || isMaskedAt(plan, peel.index, half)) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${half} is peeled before ${relief.name} is glued in: its ${loose} pieces lie loose. Peel it once the glue holds.`,
                where: peel.where,
                step: peel.index,
                related: [{ message: phrase`It is glued in here.`, where: step.where }],
                fixes: peelLater(plan, half, peel, step.index),
            });
        }
    },
};

function isPeelOf(step: Plan['steps'][number]['step'], half: string, after: number, before: number): step is Peel {
    return step.kind === 'peel' && step.blank.value === half && step.index > after && step.index < before;
}

/** Before the board is sanded, which is when it has to be off at last. */
function peelLater(plan: Plan, half: string, peel: Peel, laid: number) {
    const board = plan.steps[laid]?.blank;
    const sanding = plan.steps.find(({ step, blank }) => step.kind === 'sand' && blank === board && step.index > laid)?.step;
    if (sanding === undefined) return [];
    return [{ title: phrase`Peel ${half} later`, preferred: true, changes: peelFirst(plan, half, sanding, peel) }];
}
