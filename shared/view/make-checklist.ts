import type { Plan, StepPlan } from '../plan/plan';
import { stepKey } from '../plan/step-key';
import { showQuantity, showTime } from '../quantity/show';
import { stepFacts } from '../sheets/step-facts';
import type { Checklist, ChecklistItem } from './protocol';

/** The steps to tick, with ids that survive edits around them: kind, name and how many of the same came before. */
export function makeChecklist(plan: Plan): Checklist {
    const { recipe } = plan;
    const seen = new Map<string, number>();
    return {
        recipe: recipe.name,
        title: recipe.title || recipe.name,
        revision: recipe.revision,
        totals: plan.totals,
        cautions: plan.cautions,
        items: plan.steps.map((step) => {
            const base = stepKey(step.step);
            const before = seen.get(base) ?? 0;
            seen.set(base, before + 1);
            return item(step, before === 0 ? base : `${base} ${before + 1}`);
        }),
    };
}

function item(plan: StepPlan, id: string): ChecklistItem {
    const { step, title, unplanned } = plan;
    const facts = stepFacts(plan);
    const measure = step.kind === 'check' ? (step.depth ?? step.width) : undefined;
    return {
        id,
        label: title,
        detail:
            unplanned ??
            facts
                .slice(0, 1)
                .map(({ label, value }) => `${label} ${value}`)
                .join(),
        tooltip: [title, ...facts.map((fact) => `${fact.label}: ${fact.value}`)].join('\n'),
        where: step.where,
        ...(step.kind === 'wait' ? { wait: step.time.value, detail: showTime(step.time.value) } : {}),
        ...(measure === undefined ? {} : { measure: `should be ${showQuantity(measure)}` }),
    };
}
