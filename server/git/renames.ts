import type { ChangedFile } from './repository';

/** What files were called before and what they are called now. */
export class Renames {
    private readonly formerly = new Map<string, string>();
    private readonly nowadays = new Map<string, string>();

    constructor(changes: readonly ChangedFile[]) {
        for (const { before, after } of changes) {
            if (before === undefined || after === undefined || before === after) continue;
            this.formerly.set(after, before);
            this.nowadays.set(before, after);
        }
    }

    /** A file under both names, whichever of them is given; a name that is used anew means the new file. */
    pair(name: string): { readonly before: string; readonly after: string } {
        const before = this.formerly.get(name);
        if (before !== undefined) return { before, after: name };
        return { before: name, after: this.nowadays.get(name) ?? name };
    }
}
