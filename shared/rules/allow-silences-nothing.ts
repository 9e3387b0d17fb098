import type { Plan } from '../plan/plan';
import type { Allow } from '../recipe/allow';
import type { Finding } from '../recipe/finding';
import { phrase } from '../recipe/phrase';
import type { Page } from './page';
import { finding } from './rule';

export const allowPage: Page = {
    id: 'allow-silences-nothing',
    title: 'An allow that silences nothing',
    severities: ['hint'],
    quickFix: 'always',
    condition: 'An `allow` names a rule that has nothing to say there.',
    why: 'A reviewer reads it as a risk that was taken. It also hides the rule the day it would speak.',
    mend: 'Take the line out.',
    source: 'Our own, so that exceptions stay few and true.',
};

/** Every allow that no finding answered to. */
export function allowSilencesNothing(plan: Plan, used: ReadonlySet<Allow>): Finding[] {
    const written = [
        ...plan.recipe.allows.map((allow) => ({ allow, step: undefined })),
        ...plan.recipe.steps.flatMap((step) => step.allows.map((allow) => ({ allow, step: step.index }))),
    ];
    return written
        .filter(({ allow }) => !used.has(allow))
        .map(({ allow, step }) =>
            finding(allowPage, {
                severity: 'hint',
                message: phrase`Nothing here needs ${allow.rule} to be allowed.`,
                where: allow.where,
                ...(step === undefined ? {} : { step }),
                fixes: [{ title: phrase`Take it out`, preferred: true, changes: [{ do: 'remove', where: allow.where }] }],
            }),
        );
}
