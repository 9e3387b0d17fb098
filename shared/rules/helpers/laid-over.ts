import type { Step } from '../../recipe/step';
import type { Laying, Named, Over } from '../../recipe/stock';

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

/** What the stock says of laying one thing on another; undefined where it says nothing. */
export function saidOfLaying(top: Laying | undefined, below: Laying | undefined): Over | undefined {
    for (const kind of below?.kinds ?? []) {
        const said = top?.over.find(({ under }) => under === kind);
        if (said !== undefined) return said;
    }
    return undefined;
}
