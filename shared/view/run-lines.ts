import type { Burnt } from './protocol';

/** What was measured of a step, as it is written in a run: `depth 0.53 mm`. */
export interface Measured {
    readonly step: string;
    readonly words: string;
}

/** What a step that is done leaves for the run. */
export interface DoneStep {
    /** What the step was burnt in and with when it was ticked: the recipe may change before the run is written. */
    readonly burnt?: Burnt;
    readonly measured?: readonly Measured[];
}

/**
 * The lines of a run from what was ticked: a line for each step that was burnt, with what was measured of
 * it behind. Of a step that was measured again the last measure counts.
 * @param order ids of the steps in the order of the work
 */
export function runLines(done: Readonly<Record<string, DoneStep>>, order: readonly string[]): string[] {
    const steps = new Map<string, { burnt: string; measured: Map<string, string> }>();
    const of = (step: string) => {
        const known = steps.get(step) ?? { burnt: '', measured: new Map() };
        steps.set(step, known);
        return known;
    };
    for (const id of order) {
        const { burnt, measured = [] } = done[id] ?? {};
        if (burnt !== undefined) of(burnt.step).burnt = burnt.words;
        for (const { step, words } of measured) of(step).measured.set(words.split(' ', 1)[0]!, words);
    }
    return [...steps].map(([step, { burnt, measured }]) => {
        const words = [...measured.keys()].toSorted().map((what) => measured.get(what)!);
        return [step, burnt, ...words].filter((part) => part !== '').join(' ');
    });
}
