import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import type { Figures } from './figures';
import { graded, type Resting } from './graded';
import type { Page } from './page';

/** One thing that the tool notices. `examine` is pure and looks at nothing but the plan; what it would have written it asks of `figures`. */
export interface Rule {
    readonly page: Page;
    /** It judges what is drawn together with a figure, so that no figure can be tried out on it without drawing anew. */
    readonly followsDrawing?: true;
    examine(plan: Plan, figures?: Figures): Iterable<Finding>;
}

/** The parts of a finding a rule has to say; the rest is empty. */
export type Said = Pick<Finding, 'severity' | 'message' | 'where'> & Partial<Finding> & Resting;

/** A finding of a rule, as grave as what it rests on allows. */
export function finding(page: Page, { rests, ...said }: Said): Finding {
    return { related: [], fixes: [], ...graded(said, rests ?? []), rule: page.id };
}
