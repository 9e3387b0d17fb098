import type { Plan, StepPlan } from '../plan/plan';
import { stepIds } from '../plan/step-key';
import type { Quantity } from '../quantity/quantity';
import { showLengthInterval, showQuantity } from '../quantity/show';
import type { Recipe } from '../recipe/recipe';
import { stepFacts } from '../sheets/step-facts';
import type { Burnt, Checklist, ChecklistItem, Measure } from './protocol';
import { burntWords, plannedWords } from './settings-text';

/** The steps to tick, with ids that survive edits around them. */
export function makeChecklist(plan: Plan): Checklist {
    const { recipe } = plan;
    const ids = stepIds(plan.steps.map(({ step }) => step));
    return {
        recipe: recipe.name,
        title: recipe.title || recipe.name,
        revision: recipe.revision,
        ...(recipe.laser === undefined ? {} : { laser: recipe.laser.name }),
        ...(plan.totals === undefined ? { unknown: plan.unknown ?? '' } : { totals: plan.totals }),
        cautions: plan.cautions,
        items: plan.steps.map((step, index) => item(step, ids[index]!, recipe)),
    };
}

function item(plan: StepPlan, id: string, recipe: Recipe): ChecklistItem {
    const { step, title, unplanned } = plan;
    const facts = stepFacts(plan);
    const burnt = burntOf(plan, recipe);
    const measures = measuresOf(plan);
    const burntDepth = burntDepthOf(plan);
    const measureAfter = measureAfterOf(plan);
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
        // How long is in the title; what for is not.
        ...(step.kind === 'wait' ? { wait: step.time.value, detail: step.reason ?? '' } : {}),
        ...(burnt === undefined ? {} : { burnt }),
        ...(measures.length === 0 ? {} : { measures }),
        ...(burntDepth === undefined ? {} : { burntDepth }),
        ...(measureAfter === undefined ? {} : { measureAfter }),
    };
}

function burntOf({ step, laser }: StepPlan, { blanks }: Recipe): Burnt | undefined {
    if ((step.kind !== 'engrave' && step.kind !== 'cut') || laser?.settings === undefined) return undefined;
    const sheet = blanks.find(({ name }) => name === step.blank.value)?.sheet?.name;
    const { depth, through, goesOn } = laser;
    // Two doses gave that depth, and a line of a run knows one: without settings it teaches nothing wrong.
    const whole = goesOn === undefined ? burntWords(step, laser.settings, sheet) : sheet === undefined ? '' : `of ${sheet}`;
    const words = whole.trim();
    if (step.kind !== 'engrave' || depth === undefined || through || !(depth.value > 0)) return { step: step.name, words };
    const unit = step.depth !== undefined && 'unit' in step.depth ? step.depth.unit : undefined;
    return { step: step.name, words: `${words} ${plannedWords(depth, unit)}`.trim() };
}

/** The depth of a pocket, which no step but a check asks for while one is at the bench. */
function burntDepthOf({ step, laser }: StepPlan): Measure | undefined {
    if (step.kind !== 'engrave' || laser?.depth === undefined || laser.through || laser.tone !== undefined) return undefined;
    const { depth } = laser;
    if (!(depth.value > 0)) return undefined;
    const unit = step.depth !== undefined && 'unit' in step.depth ? step.depth.unit : 'mm';
    return { step: step.name, what: 'depth', wish: showLengthInterval(depth, unit), unit, low: depth.low, high: depth.high };
}

/** What goes on already is corrected in the text: its passes are of other settings. */
function measureAfterOf({ step, laser }: StepPlan): ChecklistItem['measureAfter'] {
    const passes = laser?.settings?.passes ?? 1;
    if (step.kind !== 'engrave' || step.depth === undefined || laser?.goesOn !== undefined || passes < 2) return undefined;
    return { where: step.depth.where, passes, unit: 'unit' in step.depth ? step.depth.unit : 'mm' };
}

function measuresOf({ step }: StepPlan): Measure[] {
    if (step.kind !== 'check' || step.step.value === undefined) return [];
    const name = step.step.value;
    const measure = (what: Measure['what'], wish: Quantity | undefined): Measure[] => {
        if (wish === undefined) return [];
        const { value, tolerance } = wish;
        const unit = what === 'tone' ? '%' : wish.unit;
        return [{ step: name, what, wish: showQuantity(wish), unit, low: value - tolerance, high: value + tolerance }];
    };
    const through: Measure[] =
        step.through === undefined ? [] : [{ step: name, what: 'through', wish: 'through', unit: '', low: 1, high: 1 }];
    return [...measure('depth', step.depth), ...measure('width', step.width), ...measure('tone', step.tone), ...through];
}
