import type { LaserStep } from '../../plan/plan';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'mirrored-twice',
    title: 'Mirrored twice',
    severities: ['error'],
    quickFix: 'always',
    condition: 'A step says `mirror` more than once, or both halves of an inlay are mirrored.',
    error: 'Always: turned over, the halves do not match.',
    why: 'Two mirrors undo each other: the halves are the same way round again, and turning one over makes them clash.',
    mend: 'Keep one `mirror`, in the step that cuts the veneer half.',
    source: commonPractice,
};

export const mirroredTwice: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if ((step.kind !== 'engrave' && step.kind !== 'cut') || step.mirror.length < 2) continue;
            yield finding(page, {
                severity: 'error',
                message: phrase`${step.name} is mirrored ${step.mirror.length} times${step.mirror.length % 2 === 0 ? phrase`, which is as good as not at all` : ''}.`,
                where: step.mirror[1]!,
                step: step.index,
                related: [{ message: phrase`It is mirrored here already.`, where: step.mirror[0]! }],
                fixes: [
                    {
                        title: phrase`Keep one mirror`,
                        preferred: true,
                        changes: step.mirror.slice(1).map((where) => ({ do: 'remove', where }) as const),
                    },
                ],
            });
        }
        for (const { inlay } of plan.steps) {
            if (inlay === undefined || inlay.relief.kind === 'cut' || !odd(inlay.relief) || !odd(inlay.pocket)) continue;
            const where = inlay.pocket.mirror[0]!;
            yield finding(page, {
                severity: 'error',
                message: phrase`Both halves are mirrored: ${inlay.relief.name} and ${inlay.pocket.name}. Turned over, they no longer match.`,
                where,
                step: inlay.pocket.index,
                related: [
                    { message: phrase`The veneer half is mirrored here, as it should be.`, where: inlay.relief.mirror[0]! },
                ],
                fixes: [
                    { title: phrase`Do not mirror ${inlay.pocket.name}`, preferred: true, changes: [{ do: 'remove', where }] },
                ],
            });
        }
    },
};

function odd(step: LaserStep): boolean {
    return step.mirror.length % 2 === 1;
}
