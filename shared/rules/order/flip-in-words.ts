import type { Plan, StepPlan } from '../../plan/plan';
import { phrase } from '../../recipe/phrase';
import type { Do } from '../../recipe/step';
import { nameOf } from '../helpers/face-at';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'flip-in-words',
    title: 'Turned over in words alone',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'A `do` says that a blank is turned over or laid down with its other face up, and the laser works on it again as if it lay as before.',
    why: 'The words of a `do` move nothing: what follows is planned, drawn and written into the same file on the face that was up.',
    mend: 'Write `flip` and the blank’s name: files are split there, and the back is a face of its own.',
    source: 'What a `do` means in the language.',
};

const turnsOver =
    /\b(?:(?:turn|flip|roll)(?:s|ed|ing)?\b[^.;,]*\b(?:over|upside down|face[- ]down)|flip(?:s|ped|ping)? (?:it|the)\b|(?:other|back|second|under)[- ]?(?:face|side) up)\b/i;
/** Said of what is turned again and again. */
const nowAndThen = /\b(?:every|while|until|from time to time|now and then)\b/i;

export const flipInWords: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'do' || !turnsOver.test(step.text) || nowAndThen.test(step.text)) continue;
            const again = nextOnSame(plan, step);
            if (again === undefined) continue;
            const { before, after } = again;
            const blank = after.blank ?? '';
            yield finding(page, {
                severity: 'warning',
                message: phrase`A \`do\` turns nothing over: ${nameOf(after.step)} is planned on the same face as ${nameOf(before.step)}. If ${blank} is turned over, write \`flip ${blank}\`.`,
                where: step.where,
                step: step.index,
                related: [{ message: phrase`${nameOf(after.step)} is burnt here.`, where: after.step.where }],
                fixes: [
                    {
                        title: phrase`Add \`flip ${blank}\``,
                        preferred: true,
                        changes: [statementBefore(after.step, `flip ${blank}`)],
                    },
                ],
            });
        }
    },
};

/** The last burn before it and the next one after it, where both are on one blank and nothing between them turns that over or takes a half in. */
function nextOnSame({ steps }: Plan, { index }: Do): { before: StepPlan; after: StepPlan } | undefined {
    const after = steps.find(({ step, laser }) => step.index > index && laser !== undefined);
    const before = steps.findLast(
        ({ step, laser, blank }) => step.index < index && laser !== undefined && blank === after?.blank,
    );
    if (after === undefined || before === undefined) return undefined;
    const between = steps.slice(before.step.index + 1, after.step.index);
    return between.some(({ step }) => step.kind === 'flip' || step.kind === 'inlay') ? undefined : { before, after };
}
