import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import type { Page } from './page';

/** One thing that the tool notices. `examine` is pure and looks at nothing but the plan. */
export interface Rule {
    readonly page: Page;
    examine(plan: Plan): Iterable<Finding>;
}

/** The parts of a finding a rule has to say; the rest is empty. */
export type Said = Pick<Finding, 'severity' | 'message' | 'where'> & Partial<Finding>;

export function finding(page: Page, said: Said): Finding {
    return { related: [], fixes: [], ...said, rule: page.id };
}
