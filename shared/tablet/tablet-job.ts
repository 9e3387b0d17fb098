import type { Plan } from '../plan/plan';
import { fromBase } from '../quantity/quantity';
import { cautionFacts, workFacts } from '../sheets/step-facts';
import { makeChecklist } from '../view/make-checklist';
import type { Burnt, Measure } from '../view/protocol';
import type { TabletWords } from './tablet-words';

/** What the page for the tablet knows of a recipe beyond what stands on it: plain data, read by its script. */
export interface TabletJob {
    readonly recipe: string;
    readonly title: string;
    readonly revision: number;
    readonly laser?: string;
    /** The fingerprint of what recipe and stock say, which the run keeps. */
    readonly mark?: string;
    readonly steps: readonly TabletStep[];
    /** `engrave` or `cut`, by the name of the step: a line of a run that begins with it is read whatever the step is called. */
    readonly kinds: Readonly<Record<string, string>>;
    readonly words: TabletWords;
}

export interface TabletStep {
    readonly id: string;
    readonly label: string;
    /** Seconds to wait once it is ticked. */
    readonly wait?: number;
    readonly burnt?: Burnt;
    readonly asked: readonly AskedFigure[];
}

/** A figure that is asked for beside its step; through asks for yes or no. */
export interface AskedFigure {
    readonly step: string;
    readonly what: Measure['what'];
    /** What it should be, as it is shown. */
    readonly wish: string;
    readonly unit: string;
    /** In that unit. */
    readonly low: number;
    readonly high: number;
}

/** A step as it is shown, which the script does not need to know. */
export interface ShownStep extends TabletStep {
    readonly facts: readonly { readonly label: string; readonly value: string }[];
    readonly about?: string;
    readonly mirrored: boolean;
}

/** The steps of a plan for the page on a tablet, with what is asked at each of them. */
export function tabletSteps(plan: Plan): ShownStep[] {
    const { items } = makeChecklist(plan);
    const checked = new Set(items.flatMap(({ measures = [] }) => measures.map(({ step, what }) => `${what} ${step}`)));
    return plan.steps.map((step, index) => {
        const { id, label, wait, burnt, measures = [], burntDepth } = items[index]!;
        // What a check asks for later is not asked for twice.
        const depth = burntDepth === undefined || checked.has(`depth ${burntDepth.step}`) ? [] : [burntDepth];
        return {
            ...{ id, label, asked: [...measures, ...depth].map(askedFigure) },
            ...(wait === undefined || !(wait > 0) || !Number.isFinite(wait) ? {} : { wait }),
            ...(burnt === undefined ? {} : { burnt }),
            facts: [
                ...(step.unplanned === undefined ? workFacts(step) : [{ label: 'open', value: step.unplanned }]),
                ...cautionFacts(step),
            ],
            ...(step.step.about === undefined ? {} : { about: step.step.about }),
            mirrored: step.laser?.mirrorAxis !== undefined,
        };
    });
}

function askedFigure({ step, what, wish, unit, low, high }: Measure): AskedFigure {
    const shown = (value: number): number => (unit === '%' ? value * 100 : fromBase(value, unit));
    return { step, what, wish, unit, low: shown(low), high: shown(high) };
}
