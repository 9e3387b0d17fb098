import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import { agreeOnFigures } from './agree-on-figures';
import { allRules } from './all-rules';
import { examineBy, type Silenced, silencedBy } from './examine-by';
import type { Rule } from './rule';

/** Runs every rule over a plan. Where several would have one figure changed, they offer one that serves them all. */
export function examine(plan: Plan, rules: readonly Rule[] = allRules): readonly Finding[] {
    return examineBy(plan, rules, agreeOnFigures);
}

/** What the rules would say if nothing were allowed, with what allows it. */
export function silencedIn(plan: Plan, rules: readonly Rule[] = allRules): Silenced[] {
    return silencedBy(plan, rules, agreeOnFigures);
}
