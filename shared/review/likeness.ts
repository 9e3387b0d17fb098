import { distance } from 'fastest-levenshtein';
import type { Figure } from './figure';
import type { ToldStep } from './written-step';

/** From here on two steps of one kind count as the same step, reworded: more than half of what they say agrees. */
export const likeEnough = 0.5;

/** Longer words are compared by their beginning, so that a novel in a recipe costs no more than a note. */
const longest = 200;

/** How alike two steps are, 0 to 1; steps of different kinds are not alike at all. The same either way round. */
export function likeness(a: ToldStep, b: ToldStep): number {
    if (a.step.kind !== b.step.kind) return 0;
    const other = new Map(b.figures.map((figure) => [figure.label, figure]));
    const labels = new Set([...a.figures, ...b.figures].map(({ label }) => label));
    let sum = wordLikeness(a.key, b.key);
    for (const figure of new Map(a.figures.map((each) => [each.label, each])).values()) {
        const counterpart = other.get(figure.label);
        if (counterpart !== undefined) sum += figureLikeness(figure, counterpart);
    }
    return sum / (labels.size + 1);
}

function figureLikeness(a: Figure, b: Figure): number {
    if (a.key === b.key) return 1;
    if (a.amount !== undefined && b.amount !== undefined) return 0.5;
    return 0.8 * wordLikeness(a.text, b.text);
}

/** 1 for the same words, 0 for words that share no letter in place. */
export function wordLikeness(a: string, b: string): number {
    const one = a.slice(0, longest);
    const two = b.slice(0, longest);
    return 1 - distance(one, two) / Math.max(1, one.length, two.length);
}
