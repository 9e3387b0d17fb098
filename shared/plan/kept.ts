/**
 * Answers kept on the very things they are about, so that they go when those go. A WeakMap holds its answers until the
 * next full collection: as an answer leads back to its tree, every keystroke would leave a whole tree to be copied about.
 * Only saves work: what is kept is never sent, copied or compared.
 */
export class KeptOn<Thing extends object, Answer> {
    private readonly key = Symbol('kept');

    get(thing: Thing): Answer | undefined {
        return Object.hasOwn(thing, this.key) ? (thing as { [key: symbol]: Answer })[this.key] : undefined;
    }

    set(thing: Thing, answer: Answer): void {
        Object.defineProperty(thing, this.key, { value: answer, configurable: true });
    }

    getOr(thing: Thing, compute: () => Answer): Answer {
        if (!Object.hasOwn(thing, this.key)) this.set(thing, compute());
        return this.get(thing) as Answer;
    }
}

const answers = /* @__PURE__ */ new KeptOn<object, Map<string, unknown>>();

/** Of one thing; more than that come from figures that somebody is typing. */
const mostAnswers = 16;

/** An answer about a large thing and something small beside it, so that a rule or a picture pays once for a region and not at every keystroke. */
export function keptFor<T>(thing: object, key: string, compute: () => T): T {
    const known = answers.getOr(thing, () => new Map());
    if (!known.has(key)) {
        if (known.size >= mostAnswers) known.clear();
        known.set(key, compute());
    }
    return known.get(key) as T;
}

const names = /* @__PURE__ */ new KeptOn<object, number>();
let named = 0;

/** A number that stands for a thing in a key, the same as long as the thing lives. */
export function nameOf(thing: object): number {
    return names.getOr(thing, () => ++named);
}
