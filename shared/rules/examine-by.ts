import type { Plan } from '../plan/plan';
import type { Allow } from '../recipe/allow';
import { byGravity, type Finding } from '../recipe/finding';
import { phrase } from '../recipe/phrase';
import type { Asking } from './agree-on-figures';
import { allowSilencesNothing } from './allow-silences-nothing';
import { inRoutine } from './in-routine';
import { inVariant } from './in-variant';
import type { Rule } from './rule';
import { underTheirCause } from './under-their-cause';

/** What an `allow … because` keeps quiet. */
export interface Silenced {
    readonly finding: Finding;
    readonly allow: Allow;
}

/** How rules are asked that would have figures written. */
export type Ask = (asking: Asking) => readonly Finding[];

/** For rules that have no figure written: nothing is tried out, which would need all that plans. */
export const askOnce: Ask = ({ plan, rules, look }) => rules.flatMap((rule) => look(rule, plan));

/**
 * Runs rules over a plan and lets each `allow … because` silence its rule, in its step or in
 * the whole recipe. A rule that fails says so instead of taking the others with it. The gravest comes first, with what follows from it
 * under it.
 */
export function examineBy(plan: Plan, rules: readonly Rule[], ask: Ask): readonly Finding[] {
    const all = ask({ plan, rules, look: examineOne, isAllowed: (finding) => isAllowed(finding, plan) });
    const used = new Set<Allow>();
    const kept = all.filter((candidate) => {
        const allow = allowFor(candidate, plan);
        if (allow !== undefined) used.add(allow);
        return allow === undefined || candidate.firm === true;
    });
    return placed(underTheirCause([...kept, ...allowSilencesNothing(plan, used)], plan), plan).toSorted(byGravity);
}

/** What rules would say if nothing were allowed, with what allows it. */
export function silencedBy(plan: Plan, rules: readonly Rule[], ask: Ask): Silenced[] {
    const all = ask({ plan, rules, look: examineOne, isAllowed: (finding) => isAllowed(finding, plan) });
    return all.flatMap((finding) => {
        const allow = finding.firm === true ? undefined : allowFor(finding, plan);
        return allow === undefined ? [] : placed([finding], plan).map((each) => ({ finding: each, allow }));
    });
}

/** Findings at places that a maker can change there: of a routine or a variant. */
function placed(findings: readonly Finding[], { recipe }: Plan): readonly Finding[] {
    return inVariant(inRoutine(findings, recipe), recipe);
}

function isAllowed(finding: Pick<Finding, 'rule' | 'step' | 'firm'>, plan: Plan): boolean {
    return finding.firm !== true && allowFor(finding, plan) !== undefined;
}

const examineOne: Asking['look'] = (rule, plan, figures) => {
    try {
        return [...rule.examine(plan, figures)];
    } catch (problem) {
        const message = phrase`The check ${rule.page.id} could not be made: ${problem instanceof Error ? problem.message : String(problem)}`;
        return [{ rule: rule.page.id, severity: 'info', message, where: plan.recipe.where, related: [], fixes: [] }];
    }
};

function allowFor(finding: Pick<Finding, 'rule' | 'step'>, plan: Plan): Allow | undefined {
    const ofStep = finding.step === undefined ? [] : (plan.recipe.steps[finding.step]?.allows ?? []);
    return [...ofStep, ...plan.recipe.allows].find((allow) => allow.rule === finding.rule);
}
