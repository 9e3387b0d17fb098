import { showLength, showLengthInterval } from '../../quantity/show';
import { depthRange, sensibleDepths } from '../helpers/ask-depth';
import { checkRange } from '../helpers/check-range';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'check-disagrees',
    title: 'A check that the work cannot pass',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'A check asks for a depth within which the depth that is asked of the engraving does not lie.',
    why: 'Either the check or the depth was changed and the other forgotten. At the bench a good pocket would be thrown away, or a bad one kept.',
    mend: 'Make the two agree.',
    source: 'Plain comparison.',
};

export const checkDisagrees: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'check' || step.depth === undefined) continue;
            const made = plan.steps.find((other) => other.step.kind === 'engrave' && other.step.name === step.step.value);
            const depth = made?.laser?.depth;
            if (made?.step.kind !== 'engrave' || depth === undefined || made.laser?.tone !== undefined) continue;
            const range = checkRange(step.depth);
            if (depth.value >= range.low - 1e-9 && depth.value <= range.high + 1e-9) continue;
            const text = depthRange(depth.value, step.depth.tolerance, step.depth.unit);
            yield finding(page, {
                severity: 'warning',
                message: `The check wants ${showLengthInterval(range)}; ${made.step.name} is ${showLength(depth.value)} deep.`,
                where: step.depth.where,
                step: step.index,
                related: [{ message: 'The depth is asked for here.', where: made.step.depth?.where ?? made.step.where }],
                fixes:
                    step.depth.tolerance > 0 && depth.value >= sensibleDepths[0] && depth.value <= sensibleDepths[1]
                        ? [{ title: `Check for ${text}`, changes: [{ do: 'replace', where: step.depth.where, text }] }]
                        : [],
            });
        }
    },
};
