import type { PlannedStep } from '../../language/planned/planned-step';

/** What the last plan of each file said of its steps, for hints and pins, which never wait for a plan. */
export class LastPlans {
    private readonly plans = new Map<string, readonly PlannedStep[]>();

    /** @param changed told when a plan says something else than the one before it */
    constructor(private readonly changed: () => void) {}

    of(uri: string): readonly PlannedStep[] {
        return this.plans.get(uri) ?? [];
    }

    keep(uri: string, planned: readonly PlannedStep[]): void {
        const before = said(this.of(uri));
        this.plans.set(uri, planned);
        if (said(planned) !== before) this.changed();
    }

    forget(uri: string): void {
        this.plans.delete(uri);
    }
}

/** Where a step stands is left out: editors move their hints along by themselves. */
function said(planned: readonly PlannedStep[]): string {
    return JSON.stringify(planned.map(({ recipe, text, figures }) => [recipe, text, figures.pins, figures.hints]));
}
