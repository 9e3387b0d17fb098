import type { SvgElement } from '../xml/tree';

/** Whether one element, by itself, fits. */
export type Test = (element: SvgElement, steps: Steps) => boolean;

/** Counts what matching costs; once it is used up, nothing matches any more. */
export interface Steps {
    left: number;
}

/** A selector read from right to left: what the element must be, then how to reach the next one. */
export interface CompiledSelector {
    readonly compounds: readonly Compound[];
    /** Ids, then classes, attributes and pseudo-classes, then names, as one number (CSS Selectors 4, section 17). */
    readonly specificity: number;
    /** What the element itself must have: `#id`, `.class` or a name, by which rules are looked up; `*` if nothing is sure. */
    readonly key: string;
}

export interface Compound {
    readonly tests: readonly Test[];
    /** How it is joined to the compound on its left. */
    readonly combinator: string | undefined;
}

/** Thrown for a selector that is not understood, and caught where a rule is read. */
export class UnknownSelector extends Error {}

export function matches({ compounds }: CompiledSelector, element: SvgElement, steps: Steps): boolean {
    return matchesFrom(compounds, 0, element, steps);
}

function matchesFrom(compounds: readonly Compound[], at: number, element: SvgElement, steps: Steps): boolean {
    if (steps.left-- <= 0) return false;
    const { tests } = compounds[at]!;
    for (const test of tests) if (!test(element, steps)) return false;
    const next = at + 1;
    if (next === compounds.length) return true;
    switch (compounds[at]!.combinator) {
        case '>':
            return element.parent !== undefined && matchesFrom(compounds, next, element.parent, steps);
        case '+': {
            const before = element.parent?.children[element.index - 1];
            return before !== undefined && matchesFrom(compounds, next, before, steps);
        }
        case '~':
            for (let i = element.index - 1; i >= 0; i--) {
                if (matchesFrom(compounds, next, element.parent!.children[i]!, steps)) return true;
            }
            return false;
        default:
            for (let outer = element.parent; outer !== undefined; outer = outer.parent) {
                if (matchesFrom(compounds, next, outer, steps)) return true;
            }
            return false;
    }
}
