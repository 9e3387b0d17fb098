import type { BoardRuns } from '../../burn/board-runs';
import type { Plan, StepPlan } from '../../plan/plan';
import type { BurntStep, Run } from '../../recipe/run';
import type { Engrave } from '../../recipe/step';
import { blankOf } from './blank-names';

/** The newest measurement of a step by the recipe as it stands, on its laser and board as they are now. */
export interface NewestRun {
    readonly run: Run;
    readonly burnt: BurntStep;
}

/**
 * The newest run in which something of a laser step was measured or looked at. Undefined where it has had its answer since: the recipe bears
 * another issue, the coupon was burnt anew, the laser was serviced, or another board was bought.
 */
export function newestRun(plan: Plan, stepPlan: StepPlan, what: 'depth' | 'width' | 'tone' | 'through'): NewestRun | undefined {
    const { recipe } = plan;
    if (stepPlan.step.kind !== 'engrave' && stepPlan.step.kind !== 'cut') return undefined;
    const { name } = stepPlan.step;
    const measured = recipe.runs
        .flatMap((run) => run.burnt.map((burnt) => ({ run, burnt })))
        .filter(({ burnt }) => burnt.step.value === name && burnt[what] !== undefined);
    // Of one day the line that stands last.
    const newest = measured.reduce<NewestRun | undefined>(
        (last, each) => (last === undefined || each.run.date.value >= last.run.date.value ? each : last),
        undefined,
    );
    if (newest === undefined) return undefined;
    const { run, burnt } = newest;
    const sheet = blankOf(plan, stepPlan)?.blank.sheet?.name;
    const isSame =
        (run.revision === undefined || run.revision === recipe.revision) &&
        (run.laser === undefined || run.laser.name === recipe.laser?.name) &&
        (burnt.sheet === undefined || burnt.sheet === sheet);
    const start = boardOf(plan, stepPlan)?.start;
    return isSame && (start === undefined || run.date.value >= start.date) ? newest : undefined;
}

/** What runs say of the board or veneer that a step works on. */
export function boardOf(plan: Plan, stepPlan: StepPlan): BoardRuns | undefined {
    const sheet = blankOf(plan, stepPlan)?.blank.sheet?.name;
    return plan.boards.find((board) => board.sheet === sheet);
}

/** The engravings of a plan. */
export function engravings(plan: Plan): { readonly step: Engrave; readonly stepPlan: StepPlan }[] {
    return plan.steps.flatMap((stepPlan) => (stepPlan.step.kind === 'engrave' ? [{ step: stepPlan.step, stepPlan }] : []));
}
