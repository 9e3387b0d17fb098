import { type Message, phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'no-glue',
    title: 'No glue is named',
    severities: ['info'],
    quickFix: 'always',
    condition: 'An inlay has no `glue` line, and does not say `without glue` either.',
    why: 'Its film is not counted in how high the veneer sits, its cure not in the schedule, and nothing of it is bought.',
    mend: 'Name the glue, or write `without glue` for a piece that is pressed in dry.',
    source: commonPractice,
};

export const noGlue: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'inlay' || step.glue !== undefined || step.glueWhere !== undefined) continue;
            const add = (statement: string, title: Message) =>
                ({ title, changes: [{ do: 'add', block: step.whole, statement }] }) as const;
            yield finding(page, {
                severity: 'info',
                message: phrase`Nothing says what glues ${step.relief.value ?? phrase`the inlay`} in: its film counts as 0 mm, and no glue is bought.`,
                where: step.where,
                step: step.index,
                fixes: [
                    { ...add('glue wood-glue', phrase`Glue with wood-glue`), preferred: true },
                    add('without glue', phrase`Say that it is pressed in dry`),
                ],
            });
        }
    },
};
