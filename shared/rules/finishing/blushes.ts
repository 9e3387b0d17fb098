import { climateOf } from '../../bench/shop-climate';
import { showRatio } from '../../quantity/show';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Humidity from which what dries by its solvent may turn white, 0 to 1: the strictest of those seen. */
const mayBlush = 0.7;
/** From here on nobody said that it does not. */
const blushesSurely = 0.76;

const page: Page = {
    id: 'blushes',
    title: 'Shellac or lacquer in damp air',
    severities: ['warning', 'info'],
    quickFix: 'always',
    condition: `The air is damper than ${showRatio(mayBlush)} (\`humidity\` in the shop or the step), and something that dries by its solvent goes on, such as shellac or lacquer; from ${showRatio(blushesSurely)} on it is a warning. A \`do\` step before it that dries the air counts.`,
    why: 'The solvent goes off so fast that the face cools and water from the air settles in the wet coat. It dries to a white haze, the blush.',
    mend: 'Wait for a drier day, dry or warm the room, or slow the solvent with a retarder. A haze often goes when the air is dry and a mist of the solvent is sprayed on it.',
    source: 'Disputed, seen in forums of finishers and luthiers: below 70 % for fast finishes; shellac from 75 %; lacquers from 72 or 76 % by their make; a shellac primer’s tin allows 85 %. The tin’s own figure comes first.',
};

const statement = 'do "dry the air of the room until the hygrometer shows 60 % or less" for 5 min';

export const blushes: Rule = {
    page,
    *examine({ recipe, steps }) {
        const told = new Set<string>();
        for (const { step } of steps) {
            const used = step.kind === 'seal' || step.kind === 'finish' ? laidBy(step) : undefined;
            const { humidity } = climateOf(step, recipe.shop);
            if (humidity === undefined || humidity.value <= mayBlush) continue;
            if (used?.setsBy !== 'solvent' || told.has(used.name) || isDried(recipe.steps, step)) continue;
            told.add(used.name);
            yield finding(page, {
                severity: humidity.value >= blushesSurely ? 'warning' : 'info',
                message: phrase`The shop has ${showRatio(humidity.value)} of humidity: ${used.name} turns white in damp air, by some from ${showRatio(mayBlush)} on. Dry the air first.`,
                where: step.where,
                step: step.index,
                related: [{ message: phrase`The humidity is written here.`, where: humidity.where }],
                fixes: [
                    {
                        title: phrase`Add a step that dries the air`,
                        preferred: true,
                        changes: [statementBefore(step, statement)],
                    },
                ],
            });
        }
    },
};

const dries = /\b(?:dehumidif\w*|hygrometer|retarder)\b|\bdry the (?:air|room|shop)\b/i;

function isDried(steps: readonly Step[], { index }: Step): boolean {
    return steps.some((step) => step.kind === 'do' && step.index < index && dries.test(step.text));
}
