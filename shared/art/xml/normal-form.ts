import { phrase } from '../../recipe/phrase';
import { limits } from '../limits';
import type { Problems } from '../problems';
import { Namespaces } from './names';

/**
 * The file in a normal form that any tree builder reads alike: SVG's own elements without
 * prefixes, comments and declarations gone, every element closed. Values that hold markup or are
 * long stand in `held`, and their number, after a `holder`, in their place. `offsets` has the
 * place in the file of each element, in the order in which they open.
 */
export interface NormalForm {
    readonly text: string;
    readonly held: readonly string[];
    readonly offsets: readonly number[];
}

/** From the private use area: no file means anything by it, and a value that begins with it is held too. */
export const holder = '\uE000';

/** Writes the normal form from what the XML reader comes to. */
export class NormalFormWriter {
    private readonly out: string[] = [];
    private readonly held: string[] = [];
    private readonly offsets: number[] = [];
    private readonly names = new Namespaces();
    /** Names of the written elements that are open. */
    private readonly stack: string[] = [];
    /** How many elements deep we are in something that is left out. */
    private skipped = 0;
    private styleText = '';
    private full = false;

    /** `restore` puts back what was taken out of a value before reading. */
    constructor(
        private readonly problems: Problems,
        private readonly restore: (value: string) => string,
    ) {}

    open(name: string, attributes: Readonly<Record<string, string>>, offset: number): void {
        if (this.skipped > 0) {
            this.skipped++;
            return;
        }
        this.names.enter(attributes);
        const local = this.names.element(name);
        if (local === undefined || !this.fits(local, offset)) {
            this.names.leave();
            this.skipped = 1;
            return;
        }
        this.offsets.push(offset);
        this.stack.push(local);
        this.out.push('<', local);
        for (const written in attributes) {
            const known = this.names.attribute(written);
            // A plain href counts before an xlink:href.
            if (known === undefined || (known !== written && attributes[known] !== undefined)) continue;
            this.out.push(' ', known, '="', this.hold(this.restore(attributes[written]!)), '"');
        }
        this.out.push('>');
        this.styleText = '';
    }

    close(): void {
        if (this.skipped > 0) {
            this.skipped--;
            return;
        }
        const name = this.stack.pop();
        if (name === undefined) return;
        if (name === 'style' && this.styleText !== '') this.out.push(this.hold(this.styleText));
        this.styleText = '';
        this.out.push('</', name, '>');
        this.names.leave();
    }

    content(text: string): void {
        if (this.skipped === 0 && this.stack.at(-1) === 'style') this.styleText += this.restore(text);
    }

    finish(): NormalForm | undefined {
        this.skipped = 0;
        while (this.stack.length > 0) this.close();
        if (this.offsets.length === 0) return undefined;
        return { text: this.out.join(''), held: this.held, offsets: this.offsets };
    }

    private fits(name: string, offset: number): boolean {
        if (this.stack.length === 0) {
            if (name === 'svg' && this.offsets.length === 0) return true;
            if (this.offsets.length === 0) {
                this.problems.add(
                    'unreadable',
                    name,
                    phrase`The outermost element is <${name.slice(0, 40)}>, not <svg>.`,
                    offset,
                );
            }
            return false;
        }
        if (this.stack.length >= limits.depth) {
            this.problems.add('too-large', 'depth', phrase`Elements nested more than ${limits.depth} deep are left out.`, offset);
            return false;
        }
        if (this.offsets.length >= limits.elements) {
            if (this.full) return false;
            this.full = true;
            this.problems.add('too-large', 'elements', phrase`Only the first ${limits.elements} elements are read.`, offset);
            return false;
        }
        return true;
    }

    private hold(value: string): string {
        if (value.length <= 32 && !/[&<>"\uE000]/.test(value)) return value;
        this.held.push(value);
        return `${holder}${this.held.length - 1}`;
    }
}
