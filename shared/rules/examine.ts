import type { Plan } from '../plan/plan';
import type { Allow } from '../recipe/allow';
import type { Finding } from '../recipe/finding';
import { agreeOnFigures } from './agree-on-figures';
import { allRules } from './all-rules';
import { allowSilencesNothing } from './allow-silences-nothing';
import type { Figures } from './figures';
import { inRoutine } from './in-routine';
import { inVariant } from './in-variant';
import type { Rule } from './rule';

/** What an `allow … because` keeps quiet. */
export interface Silenced {
    readonly finding: Finding;
    readonly allow: Allow;
}

/**
 * Runs every rule over a plan and lets each `allow … because` silence its rule, in its step or in
 * the whole recipe. A rule that fails says so instead of taking the others with it. Where several would have one figure changed,
 * they offer one that serves them all.
 */
export function examine(plan: Plan, rules: readonly Rule[] = allRules): readonly Finding[] {
    const all = agreedFindings(plan, rules);
    const used = new Set<Allow>();
    const kept = all.filter((candidate) => {
        const allow = allowFor(candidate, plan);
        if (allow !== undefined) used.add(allow);
        return allow === undefined || candidate.firm === true;
    });
    return placed([...kept, ...allowSilencesNothing(plan, used)], plan);
}

/** What the rules would say if nothing were allowed, with what allows it. */
export function silencedIn(plan: Plan, rules: readonly Rule[] = allRules): Silenced[] {
    return agreedFindings(plan, rules).flatMap((finding) => {
        const allow = finding.firm === true ? undefined : allowFor(finding, plan);
        return allow === undefined ? [] : placed([finding], plan).map((each) => ({ finding: each, allow }));
    });
}

/** Findings at places that a maker can change there: of a routine or a variant. */
function placed(findings: readonly Finding[], { recipe }: Plan): readonly Finding[] {
    return inVariant(inRoutine(findings, recipe), recipe);
}

function agreedFindings(plan: Plan, rules: readonly Rule[]): Finding[] {
    const isAllowed = (finding: Pick<Finding, 'rule' | 'step' | 'firm'>): boolean =>
        finding.firm !== true && allowFor(finding, plan) !== undefined;
    return agreeOnFigures({ plan, rules, look: examineOne, isAllowed });
}

function examineOne(rule: Rule, plan: Plan, figures: Figures): Finding[] {
    try {
        return [...rule.examine(plan, figures)];
    } catch (problem) {
        const message = `The check ${rule.page.id} could not be made: ${problem instanceof Error ? problem.message : String(problem)}`;
        return [{ rule: rule.page.id, severity: 'info', message, where: plan.recipe.where, related: [], fixes: [] }];
    }
}

function allowFor(finding: Pick<Finding, 'rule' | 'step'>, plan: Plan): Allow | undefined {
    const ofStep = finding.step === undefined ? [] : (plan.recipe.steps[finding.step]?.allows ?? []);
    return [...ofStep, ...plan.recipe.allows].find((allow) => allow.rule === finding.rule);
}
