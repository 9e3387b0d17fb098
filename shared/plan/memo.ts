import { nameOf } from './kept';

/**
 * Remembers what was worked out, by stage and by the content it was worked out from, so that a
 * keystroke pays only for what it changed. Keeps the latest `limit` answers of each stage.
 * Keys must hold everything the answer depends on and nothing of where it was written.
 */
export class Memo {
    private readonly stages = new Map<string, Map<string, unknown>>();

    /** @param checkpoint called with the stage before anything is worked out again; may throw to give up. */
    constructor(
        private readonly limit = 64,
        private readonly checkpoint: (stage: string) => void = () => {},
    ) {}

    get<T>(stage: string, key: string, compute: () => T): T {
        let answers = this.stages.get(stage);
        if (answers === undefined) {
            answers = new Map();
            this.stages.set(stage, answers);
        }
        if (answers.has(key)) {
            const known = answers.get(key) as T;
            // Moves it to the young end.
            answers.delete(key);
            answers.set(key, known);
            return known;
        }
        this.checkpoint(stage);
        const fresh = compute();
        answers.set(key, fresh);
        if (answers.size > this.limit) {
            for (const oldest of answers.keys()) {
                answers.delete(oldest);
                break;
            }
        }
        return fresh;
    }

    /** A short key for a large thing that is itself remembered, such as a region: the same object has the same key. */
    keyOf(thing: object): string {
        return `@${nameOf(thing)}`;
    }
}
