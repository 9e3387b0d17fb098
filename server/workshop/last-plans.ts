import type { PlannedRun, PlannedStep } from '../../language/planned/planned-step';

/** What the last plan of each file said of its steps and runs, for hints, hovers and pins, which never wait for a plan. */
export class LastPlans {
    private readonly plans = new Map<string, Planned>();

    /** @param changed told when a plan says something else than the one before it */
    constructor(private readonly changed: () => void) {}

    of(uri: string): readonly PlannedStep[] {
        return this.plans.get(uri)?.planned ?? [];
    }

    runsOf(uri: string): readonly PlannedRun[] {
        return this.plans.get(uri)?.runs ?? [];
    }

    keep(uri: string, planned: Planned): void {
        const before = said(this.plans.get(uri));
        this.plans.set(uri, planned);
        if (said(planned) !== before) this.changed();
    }

    forget(uri: string): void {
        this.plans.delete(uri);
    }
}

export interface Planned {
    readonly planned: readonly PlannedStep[];
    readonly runs: readonly PlannedRun[];
}

/** Where a step stands is left out: editors move their hints along by themselves. */
function said(plan: Planned | undefined): string {
    const steps = plan?.planned.map(({ recipe, text, figures }) => [recipe, text, figures.pins, figures.hints]);
    return JSON.stringify([steps, plan?.runs]);
}
