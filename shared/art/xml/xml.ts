import { SaxesParser } from 'saxes';
import { limits } from '../limits';
import type { Problems } from '../problems';
import { declaredEntities } from './entities';
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

/** What saxes complains of and reads past without losing its way. */
const mild =
    /^(undefined entity|duplicate attribute|disallowed character\.|an XML declaration must be|the XML declaration must|text data outside|encoding value)/;

/** Thrown by the handlers below to make saxes stop, and caught right here. */
class Stop extends Error {}

/**
 * Reads XML up to its first serious error; what came before it is kept. Entities are expanded,
 * elements of other namespaces left out. Answers undefined if there is no SVG in it at all.
 */
export function readXml(text: string, problems: Problems): NormalForm | undefined {
    const writer = new Writer(problems);
    const parser = new SaxesParser<{ position: true }>({ position: true });
    let tagStart = 0;
    const fail = (message: string) => {
        const [reason] = message.split('\n');
        const offset = Math.min(parser.position, text.length);
        problems.add('unreadable', 'XML', `This is not well-formed XML: ${reason!.replace(/\.$/, '')}.`, offset);
        if (!mild.test(reason!)) throw new Stop();
    };
    parser.on('error', (error) => fail(error.message.replace(/^\d+:\d+: /, '')));
    parser.on('doctype', (doctype) => {
        parser.ENTITIES = declaredEntities(doctype, problems, Math.max(0, parser.position - doctype.length));
    });
    parser.on('processinginstruction', ({ target }) => {
        if (target === 'xml-stylesheet') {
            problems.add('refused', target, 'A style sheet in another file is not opened.', parser.position);
        }
    });
    parser.on('opentagstart', () => {
        tagStart = text.lastIndexOf('<', parser.position - 1);
    });
    parser.on('opentag', (tag) => writer.open(tag.name, tag.attributes as Record<string, string>, Math.max(0, tagStart)));
    parser.on('closetag', () => writer.close());
    parser.on('text', (content) => writer.content(content));
    parser.on('cdata', (content) => writer.content(content));
    try {
        parser.write(text).close();
    } catch (error) {
        if (!(error instanceof Stop)) problems.add('unreadable', 'XML', 'This file could not be read as XML.');
    }
    return writer.finish();
}

class Writer {
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

    constructor(private readonly problems: Problems) {}

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
            this.out.push(' ', known, '="', this.hold(attributes[written]!), '"');
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
        if (this.skipped === 0 && this.stack.at(-1) === 'style') this.styleText += text;
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
                this.problems.add('unreadable', name, `The outermost element is <${name.slice(0, 40)}>, not <svg>.`, offset);
            }
            return false;
        }
        if (this.stack.length >= limits.depth) {
            this.problems.add('too-large', 'depth', `Elements nested more than ${limits.depth} deep are left out.`, offset);
            return false;
        }
        if (this.offsets.length >= limits.elements) {
            if (this.full) return false;
            this.full = true;
            this.problems.add('too-large', 'elements', `Only the first ${limits.elements} elements are read.`, offset);
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
