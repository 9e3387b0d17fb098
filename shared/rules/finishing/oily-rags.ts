import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Recipe } from '../../recipe/recipe';
import type { Step } from '../../recipe/step';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'oily-rags',
    title: 'What becomes of the oily rags',
    severities: ['info'],
    quickFix: 'always',
    condition:
        'A finish of which rags catch fire by themselves (`rags ignite`, as drying oils do) goes on, and no later `do` step speaks of the rags.',
    why: 'As the oil takes in oxygen it heats up. In a crumpled rag the heat stays inside, and hours later, with nobody in the shop, it burns.',
    mend: 'Write the step down, so that it stands on the checklist: spread each rag out flat outdoors until it is hard, or soak it in water in a closed metal can, and ask where such waste goes.',
    source: `${commonPractice} Local waste and fire rules come first.`,
};

const statement = 'do "spread the oily rags out flat outdoors, or soak them in water in a closed metal can" for 5 min';

export const oilyRags: Rule = {
    page,
    *examine({ recipe }) {
        const steps = recipe.steps.filter((step) => step.kind === 'finish' && step.coat?.rags === 'ignite');
        const last = steps.at(-1);
        if (last?.kind !== 'finish' || recipe.steps.some((step) => step.index > last.index && speaksOfRags(step))) return;
        yield finding(page, {
            severity: 'info',
            message: phrase`Rags wet with ${last.coat!.name} catch fire by themselves, and no step says what becomes of them.`,
            where: last.where,
            step: last.index,
            fixes: [stepBehind(last, recipe)],
        });
    },
};

function speaksOfRags(step: Step): boolean {
    return step.kind === 'do' && /\b(?:rags?|cloths?|wipes)\b/i.test(step.text);
}

function stepBehind(step: Step, recipe: Recipe): Fix {
    const next = recipe.steps[step.index + 1];
    const title = phrase`Add a step for the rags`;
    if (next !== undefined) return { title, preferred: true, changes: [statementBefore(next, statement)] };
    return { title, preferred: true, changes: [{ do: 'add', block: recipe.whole, statement }] };
}
