/**
 * Answers kept on the very things they are about, so that they go when those go. A WeakMap holds its answers until the
 * next full collection: as an answer leads back to its tree, every keystroke would leave a whole tree to be copied about.
 */
export class KeptOn<Thing extends object, Answer> {
    private readonly key = Symbol('kept');

    get(thing: Thing): Answer | undefined {
        return Object.hasOwn(thing, this.key) ? (thing as { [key: symbol]: Answer })[this.key] : undefined;
    }

    set(thing: Thing, answer: Answer): void {
        Object.defineProperty(thing, this.key, { value: answer, configurable: true });
    }
}
