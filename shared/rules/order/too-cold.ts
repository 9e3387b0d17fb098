import { climateOf } from '../../bench/shop-climate';
import type { Plan } from '../../plan/plan';
import { showQuantity } from '../../quantity/show';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'too-cold',
    title: 'Too cold a shop for it',
    severities: ['warning', 'hint'],
    quickFix: 'always',
    condition:
        'The shop, or the step (`temperature` in either), is colder than the least temperature of a glue, resin or finish that is used, and no `do` step before it warms shop or pieces.',
    why: 'Below it white glue dries to chalk, varnish does not flow together, and resin stays soft for weeks or for good. That is no matter of waiting longer.',
    mend: 'Warm shop, wood and bottle to that temperature and keep them so until it has set.',
    source: 'The stock’s figure. That wood glue turns to chalk below about 5 to 13 °C was seen in a glue maker’s guide and in trade advice; others are common practice, no source.',
};

export const tooCold: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const { step } of plan.steps) {
            const used = laidBy(step);
            const { temperature: air } = climateOf(step, plan.recipe.shop);
            const least = used?.leastTemperature;
            if (used === undefined || least === undefined || air === undefined || air.value >= least.value - least.tolerance)
                continue;
            if (told.has(used.name) || isHeated(plan, step)) continue;
            told.add(used.name);
            const statement = `do "warm shop, pieces and ${used.name} to ${showQuantity({ ...least, tolerance: 0 })}, and keep them so until it has set" for 10 min`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`The shop has ${showQuantity(air)}; ${used.name} needs ${showQuantity({ ...least, tolerance: 0 })} or more. Warm shop and pieces first.`,
                where: step.where,
                step: step.index,
                rests: [least.where],
                related: [
                    { message: phrase`The temperature is written here.`, where: air.where },
                    { message: phrase`The least temperature is written here.`, where: least.where },
                ],
                fixes: [
                    { title: phrase`Add a step that warms it`, preferred: true, changes: [statementBefore(step, statement)] },
                ],
            });
        }
    },
};

function isHeated({ recipe }: Plan, before: Step): boolean {
    return recipe.steps.some((step) => step.kind === 'do' && step.index < before.index && /\b(?:warm|heat)/i.test(step.text));
}
