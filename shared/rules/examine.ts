import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import { agreeOnFigures, type Look } from './agree-on-figures';
import { allRules } from './all-rules';
import { examineBy, type Silenced, silencedBy } from './examine-by';
import { atItsWord, type Figures } from './figures';
import type { Rule } from './rule';

/**
 * Runs every rule over a plan. Where several would have one figure changed, they offer one that serves them all.
 * @param checkpoint called before the figures of each rule are tried out; may throw to give up
 */
export function examine(plan: Plan, rules: readonly Rule[] = allRules, checkpoint = () => {}): readonly Finding[] {
    return examineBy(plan, rules, (asking) => agreeOnFigures({ ...asking, checkpoint }));
}

/** What can be said of a plan before any figure has been tried out. */
export interface Glance {
    readonly findings: readonly Finding[];
    /** Rules whose figures have not been tried: their findings come without fixes. Nothing is left to do where none is named. */
    readonly trying: readonly string[];
}

/**
 * What the rules say at first sight. To try figures out takes as many plans as are tried, several times as long as all else; who waits
 * for a picture takes this, and asks `examine` when there is time.
 */
export function glanceAt(plan: Plan, rules: readonly Rule[] = allRules): Glance {
    const trying: string[] = [];
    const findings = examineBy(plan, rules, (asking) =>
        asking.rules.flatMap((rule) => {
            const { found, asked } = lookOnce(asking.look, rule, plan);
            if (!asked || found.length === 0) return found;
            trying.push(rule.page.id);
            return found.map((finding) => ({ ...finding, fixes: [] }));
        }),
    );
    return { findings, trying };
}

/** What a rule says when every figure that it would have is taken, and whether it asked for one. */
function lookOnce(look: Look, rule: Rule, plan: Plan): { readonly found: readonly Finding[]; readonly asked: boolean } {
    let asked = false;
    const figures: Figures = {
        agree(proposal) {
            asked = true;
            return atItsWord.agree(proposal);
        },
        suits(...change) {
            asked = true;
            return atItsWord.suits(...change);
        },
    };
    return { found: look(rule, plan, figures), asked };
}

/** What the rules would say if nothing were allowed, with what allows it. */
export function silencedIn(plan: Plan, rules: readonly Rule[] = allRules): Silenced[] {
    return silencedBy(plan, rules, agreeOnFigures);
}
