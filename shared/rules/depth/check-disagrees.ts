import type { Plan, StepPlan } from '../../plan/plan';
import { showLength, showLengthInterval, showRatio } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Check, Engrave } from '../../recipe/step';
import { depthRange, sensibleDepths } from '../helpers/ask-depth';
import { blankOf } from '../helpers/blank-names';
import { checkRange, toneRange } from '../helpers/check-range';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'check-disagrees',
    title: 'A check that the work cannot pass',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A check asks for a depth or a tone within which what is asked of the engraving does not lie, for the depth of a step that only colours, or that an engraving comes through that is not deep enough for that.',
    why: 'Either the check or the engraving was changed and the other forgotten. At the bench a good pocket would be thrown away, or a bad one kept.',
    mend: 'Make the two agree.',
    source: 'Plain comparison.',
};

export const checkDisagrees: Rule = {
    page,
    *examine(plan) {
        for (const { step: check } of plan.steps) {
            if (check.kind !== 'check') continue;
            const made = plan.steps.find(({ step }) => step.kind === 'engrave' && step.name === check.step.value);
            if (made?.step.kind !== 'engrave') continue;
            yield* otherDepth(check, made.step, made);
            yield* otherTone(check, made.step);
            yield* neverThrough(plan, check, made.step, made);
        }
    },
};

function* otherDepth(check: Check, step: Engrave, { laser }: StepPlan): Iterable<Finding> {
    const wanted = check.depth;
    if (wanted === undefined) return;
    const asked = (where: Where) => [{ message: phrase`The depth is asked for here.`, where }];
    if (step.tone !== undefined && step.depth === undefined) {
        yield finding(page, {
            severity: 'warning',
            message: phrase`${step.name} only colours the wood: it has no depth to measure. Check its tone.`,
            where: wanted.where,
            step: check.index,
            related: [{ message: phrase`The tone is asked for here.`, where: step.tone.where }],
        });
        return;
    }
    const depth = laser?.depth;
    if (depth === undefined || laser?.tone !== undefined) return;
    const range = checkRange(wanted);
    if (depth.value >= range.low - 1e-9 && depth.value <= range.high + 1e-9) return;
    const text = depthRange(depth.value, wanted.tolerance, wanted.unit);
    yield finding(page, {
        severity: 'warning',
        message: phrase`The check asks for ${showLengthInterval(range)}; ${step.name} is ${showLength(depth.value)} deep.`,
        where: wanted.where,
        step: check.index,
        related: asked(step.depth?.where ?? step.where),
        fixes:
            wanted.tolerance > 0 && depth.value >= sensibleDepths[0] && depth.value <= sensibleDepths[1]
                ? [{ title: phrase`Check for ${text}`, changes: [{ do: 'replace', where: wanted.where, text }] }]
                : [],
    });
}

function* otherTone(check: Check, { name, tone }: Engrave): Iterable<Finding> {
    if (check.tone === undefined || tone === undefined) return;
    const range = toneRange(check.tone);
    if (tone.value >= range.low - 1e-9 && tone.value <= range.high + 1e-9) return;
    const text = showRatio(tone.value);
    yield finding(page, {
        severity: 'warning',
        message: phrase`The check asks for a tone of ${showRatio(range.low)} to ${showRatio(range.high)}; ${name} is burnt to ${text}.`,
        where: check.tone.where,
        step: check.index,
        related: [{ message: phrase`The tone is asked for here.`, where: tone.where }],
        fixes: [{ title: phrase`Check for ${text}`, changes: [{ do: 'replace', where: check.tone.where, text }] }],
    });
}

function* neverThrough(plan: Plan, check: Check, step: Engrave, made: StepPlan): Iterable<Finding> {
    const thickness = blankOf(plan, made)?.thickness;
    const deep = step.depth === undefined ? 0 : made.laser?.depth?.high;
    if (check.through === undefined || thickness === undefined || deep === undefined || deep >= thickness.low) return;
    if (step.depth === undefined && step.tone === undefined) return; // its settings are given: what they do was said of them
    yield finding(page, {
        severity: 'warning',
        message: phrase`${step.name} is not to come through: ${deep === 0 ? phrase`it only colours the wood` : phrase`it is at most ${showLength(deep)} deep`}, and that is ${showLength(thickness.low)} thick or more.`,
        where: check.through,
        step: check.index,
        related: [{ message: phrase`It is asked for here.`, where: step.depth?.where ?? step.tone?.where ?? step.where }],
    });
}
