import type { Plan } from '../../plan/plan';
import type { Where } from '../../quantity/where';
import { coatOf } from '../../recipe/laid-by';
import type { Step } from '../../recipe/step';
import { cureOf } from '../order/sand-before-cure';

/** What a step puts on a piece wet. */
export interface Wet {
    /** Name of the stock. */
    readonly name: string;
    /** How long it takes to dry, or until it holds, s. */
    readonly needs: number;
    /** The figure that says so. */
    readonly where: Where;
    readonly step: Step;
}

/** What a step lays on or pours wet, and how long that takes to dry; undefined where it lays nothing, or nobody has said how long. */
export function wetting(plan: Plan, index: number): Wet | undefined {
    const step = plan.steps[index]?.step;
    if (step === undefined) return undefined;
    if (step.kind === 'inlay' || step.kind === 'fill') {
        const cure = cureOf(plan, { step: index });
        return cure === undefined ? undefined : { name: cure.name, needs: cure.time, where: cure.where, step };
    }
    const laid = coatOf(step);
    const dry = laid?.dry;
    return laid === undefined || dry === undefined
        ? undefined
        : { name: laid.name, needs: dry.value - dry.tolerance, where: dry.where, step };
}
