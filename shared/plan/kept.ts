/**
 * Remembers what was worked out of a large thing for as long as that thing lives, so that a rule
 * or a picture pays once for a region and not at every keystroke. Only saves work: the answer is the same.
 */
const answers = new WeakMap<object, Map<string, unknown>>();

/** Of one thing; more than that come from figures that somebody is typing. */
const mostAnswers = 16;

export function keptFor<T>(thing: object, key: string, compute: () => T): T {
    let known = answers.get(thing);
    if (known === undefined) {
        known = new Map();
        answers.set(thing, known);
    }
    if (!known.has(key)) {
        if (known.size >= mostAnswers) known.clear();
        known.set(key, compute());
    }
    return known.get(key) as T;
}

const names = new WeakMap<object, number>();
let named = 0;

/** A number that stands for a thing in a key, the same as long as the thing lives. */
export function nameOf(thing: object): number {
    const known = names.get(thing) ?? ++named;
    names.set(thing, known);
    return known;
}
