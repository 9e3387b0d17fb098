import type { Plan } from '../../plan/plan';
import type { Quantity } from '../../quantity/quantity';
import { showNumber } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import { laidBy } from '../../recipe/laid-by';
import type { Step } from '../../recipe/step';
import type { Laying, Named, Over, Prepared } from '../../recipe/stock';
import { elapsed, longEnough } from './elapsed';

/** Why something does not hold on what lies below it. */
export interface Refusal {
    /** How long that must have had, where it has not had it. */
    readonly after?: Quantity;
    /** What has to be done to it, where no step does it. With neither, nothing helps. */
    readonly once?: Prepared;
    /** How long it has had, s. */
    readonly gone: number;
    /** Where the stock says so. */
    readonly where: Where;
}

/** Why what a step lays does not hold on what an earlier one has laid; undefined where it does, or where the stock says nothing of it. */
export function refusalOf(plan: Plan, top: Step, below: Step | undefined): Refusal | undefined {
    const said = saidOfLaying(laidBy(top), laidBy(below));
    if (said === undefined || below === undefined) return undefined;
    const gone = elapsed(plan, below.index, top.index);
    const { after, once, where } = said;
    if (after === undefined && once === undefined) return { gone, where };
    const tooSoon = after !== undefined && !longEnough(gone, after.value - after.tolerance);
    const unprepared = once !== undefined && !isPrepared(plan, once, top, below.index);
    if (!tooSoon && !unprepared) return undefined;
    return { gone, where, ...(tooSoon ? { after } : {}), ...(unprepared ? { once } : {}) };
}

/** Whether a step between an earlier one and `top` does what a surface of its blank needs: a sanding, or words of a `do`. */
export function isPrepared(plan: Plan, once: Prepared, top: Step, from: number): boolean {
    const blank = plan.steps[top.index]?.blank;
    return plan.steps.some(({ step, blank: of }) => {
        if (step.index <= from || step.index >= top.index) return false;
        if (step.kind === 'do') return (once === 'sanded' ? dulls : wipes).test(step.text);
        return once === 'sanded' && step.kind === 'sand' && of === blank;
    });
}

const dulls = /\b(?:sand|scuff|abra|rub|dull|flat|scrap|plan|pad\b|steel wool)/i;
/** A dry cloth takes off soot and dust, and leaves the oil and the wax where they are: it takes a solvent, by its name. */
const wipes = /\b(?:degreas|acetone|spirits?\b(?! level)|alcohol|ethanol|methanol|naphtha|benzine|turpentine|solvent|thinner)/i;

/** The words of a `do` step that prepares a surface for what is done next. */
export function preparing(once: Prepared, what: string, next = 'glue'): string {
    return once === 'sanded'
        ? `do "scuff ${what} dull with fine paper and wipe off the dust" for 5 min`
        : `do "wipe ${what} with acetone and ${next} as soon as it is dry" for 5 min`;
}

/** Its name, with the temperature where its times were worked out for the shop. */
export function calledInShop({ name, at }: Named & Pick<Laying, 'at'>): string {
    return at === undefined ? name : `${name} at ${showNumber(at, 0)} °C`;
}

/** What the stock says of laying one thing on another, or on a wood; of what is said of several of its kinds, the nearest. */
export function saidOfLaying(top: Laying | undefined, below: Pick<Partial<Laying>, 'kinds'> | undefined): Over | undefined {
    for (const kind of below?.kinds ?? []) {
        const said = top?.over.find(({ under }) => under === kind);
        if (said !== undefined) return said;
    }
    return undefined;
}
