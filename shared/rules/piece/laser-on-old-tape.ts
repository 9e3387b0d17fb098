import { layersAbove } from '../../piece/column';
import type { Plan, StepPlan } from '../../plan/plan';
import { usualOverfill } from '../../plan/plan-fill';
import type { Change } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Peel, Step } from '../../recipe/step';
import { faceAfter, nameOf, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'laser-on-old-tape',
    title: 'Laser on tape that has been poured over',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'The beam works through masking tape over which resin has been poured since it went on.',
    why: 'What was poured too full lies on the tape. It burns with it, and the marks come out blotched or stay away.',
    mend: 'Peel the tape once the resin has cured, and mask again if the next burn needs it.',
    source: commonPractice,
};

export const laserOnOldTape: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (laser === undefined || blank === undefined) continue;
            const taped = (faceAfter(plan, step.index, blank)?.met ?? []).filter(({ column }) =>
                layersAbove(column).some(({ kind }) => kind === 'tape'),
            );
            const masked = taped
                .slice(0, 1)
                .flatMap(({ column }) => layersAbove(column))
                .find(({ kind }) => kind === 'tape')?.step;
            const poured = masked === undefined ? undefined : pouredBetween(plan, blank, masked, step.index);
            const { matters, shown } = sizeOfMet(taped);
            if (masked === undefined || poured === undefined || !matters) continue;
            const resin = poured.step.kind === 'fill' ? (poured.step.resin?.name ?? phrase`the fill`) : phrase`the fill`;
            const mask = plan.steps[masked]?.step;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${nameOf(step)} burns ${shown} through tape over which ${resin} was poured: peel ${blank} first, and mask it again if it has to be.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    taped.map(({ region }) => region),
                ),
                related: [
                    ...(mask === undefined ? [] : [{ message: phrase`The tape goes on here.`, where: mask.where }]),
                    { message: phrase`${resin} is poured here.`, where: poured.step.where },
                ],
                fixes: [{ title: phrase`Peel ${blank} first`, preferred: true, changes: peelBefore(plan, blank, step) }],
            });
        }
    },
};

/** A fill that spills: one that is not poured level. */
function pouredBetween(plan: Plan, blank: string, after: number, before: number): StepPlan | undefined {
    return plan.steps.find(
        ({ step, blank: on }) =>
            step.kind === 'fill' &&
            on === blank &&
            step.index > after &&
            step.index < before &&
            (step.overfill?.value ?? usualOverfill) > 0,
    );
}

/** The next peeling of the blank comes earlier; one more where there is none, or where it belongs to a later mask. */
function peelBefore(plan: Plan, blank: string, before: Step): Change[] {
    const next = plan.steps.find(
        ({ step, blank: on }) => step.index > before.index && on === blank && (step.kind === 'peel' || step.kind === 'mask'),
    )?.step;
    return isPeel(next)
        ? [{ do: 'move', statement: next.whole, before: before.whole }]
        : [statementBefore(before, `peel ${blank}`)];
}

function isPeel(step: Step | undefined): step is Peel {
    return step?.kind === 'peel';
}
