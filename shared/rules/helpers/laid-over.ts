import type { Plan } from '../../plan/plan';
import type { Quantity } from '../../quantity/quantity';
import type { Step } from '../../recipe/step';
import type { Laying, Named, Over } from '../../recipe/stock';
import { elapsed, longEnough } from './elapsed';

/** What a step lays on a face; undefined where it lays nothing, or nothing that has a name. */
export function laidBy(step: Step | undefined): (Laying & Named) | undefined {
    switch (step?.kind) {
        case 'seal':
            return step.sealer;
        case 'finish':
            return step.coat;
        case 'fill':
            return step.resin;
        case 'inlay':
            return step.glue;
        default:
            return undefined;
    }
}

/** Why something does not hold on what lies below it. */
export interface Refusal {
    /** How long that must have had; absent where nothing helps. */
    readonly after?: Quantity;
    /** How long it has had, s. */
    readonly gone: number;
}

/** Why what a step lays does not hold on what an earlier one has laid; undefined where it does, or where the stock says nothing of it. */
export function refusalOf(plan: Plan, top: Step, below: Step | undefined): Refusal | undefined {
    const said = saidOfLaying(laidBy(top), laidBy(below));
    if (said === undefined || below === undefined) return undefined;
    const gone = elapsed(plan, below.index, top.index);
    if (said.after === undefined) return { gone };
    return longEnough(gone, said.after.value) ? undefined : { after: said.after, gone };
}

/** What the stock says of laying one thing on another; of what is said of several of its kinds, the nearest. */
function saidOfLaying(top: Laying | undefined, below: Laying | undefined): Over | undefined {
    for (const kind of below?.kinds ?? []) {
        const said = top?.over.find(({ under }) => under === kind);
        if (said !== undefined) return said;
    }
    return undefined;
}
