import type { InlayPlan } from '../../plan/plan';

/** What goes into a pocket, as a maker calls it: a veneer, or a part that was cut out. */
export function halfNoun({ relief }: Pick<InlayPlan, 'relief'>): 'veneer' | 'part' {
    return relief.kind === 'cut' ? 'part' : 'veneer';
}
