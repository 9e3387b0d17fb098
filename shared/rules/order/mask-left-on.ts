import type { Plan } from '../../plan/plan';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { faceAtEnd, isMaskedAt } from '../helpers/face-at';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'mask-left-on',
    title: 'Mask left on',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition: 'A blank is finished while its masking tape is still on, or the tape is never taken off.',
    why: 'The finish lies on the tape and comes off with it; tape that stays for days leaves its glue on the wood.',
    mend: 'Peel the mask off before finishing.',
    source: commonPractice,
};

export const maskLeftOn: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, face } of plan.steps) {
            if (step.kind !== 'mask') continue;
            const over = plan.steps.find(
                (other) =>
                    other.step.kind === 'finish' &&
                    other.blank === blank &&
                    other.step.index > step.index &&
                    isMaskedAt(plan, other.step.index, blank),
            );
            const lastMask = plan.steps.filter((other) => other.step.kind === 'mask' && other.face === face).pop();
            const stays = over === undefined && lastMask?.step === step && isStillOn(plan, step, blank);
            if (over === undefined && !stays) continue;
            yield finding(page, {
                severity: over === undefined ? 'info' : 'warning',
                message:
                    over === undefined
                        ? phrase`The mask on ${blank} is never taken off.`
                        : phrase`${blank} is finished with its mask still on.`,
                where: step.where,
                step: step.index,
                related: over === undefined ? [] : [{ message: phrase`It is finished here.`, where: over.step.where }],
                fixes:
                    over === undefined
                        ? []
                        : [
                              {
                                  title: phrase`Peel ${blank} first`,
                                  preferred: true,
                                  changes: [statementBefore(over.step, `peel ${blank}`)],
                              },
                          ],
            });
        }
    },
};

/** Whether the tape of a step lies on the piece at its end, on whichever face. */
function isStillOn(plan: Plan, { index }: Step, blank: string | undefined): boolean {
    return faceAtEnd(plan, blank)?.bare.layers.some(({ kind, step }) => kind === 'tape' && step === index) ?? false;
}
