import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'pace-unused',
    title: 'A pace where nothing is left to choose',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'An engraving has a `pace`, and its `passes`, or both `power` and `speed`, are written too; or no depth is asked for.',
    why: '`pace` says how deep the passes of a solved depth may be. With the passes written, or without a depth, there is nothing that it could choose.',
    mend: 'Take `pace` out, or the settings that stand against it.',
    source: commonPractice,
};

export const paceUnused: Rule = {
    page,
    *examine({ recipe }) {
        for (const step of recipe.steps) {
            const why = step.kind === 'engrave' && step.pace !== undefined ? againstPace(step) : undefined;
            if (step.kind !== 'engrave' || step.pace === undefined || why === undefined) continue;
            const { where } = step.pace;
            yield finding(page, {
                severity: 'warning',
                message: phrase`\`pace\` does nothing for ${step.name}: ${why}.`,
                where,
                step: step.index,
                fixes: [{ title: phrase`Leave \`pace\` out`, preferred: true, changes: [{ do: 'remove', where }] }],
            });
        }
    },
};

function againstPace({ depth, passes, power, speed }: Engrave): string | undefined {
    if (depth === undefined) return phrase`it asks for no depth`;
    if (passes !== undefined) return phrase`its passes are written`;
    return power !== undefined && speed !== undefined ? phrase`its power and speed are written` : undefined;
}
