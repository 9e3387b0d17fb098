import { phrase } from '../../recipe/phrase';
import { limits } from '../limits';
import type { Problems } from '../problems';

const declaration = /<!ENTITY\s+(%\s+)?([^\s"'<>&%]+)\s+(?:(SYSTEM|PUBLIC)\b|"([^"]*)"|'([^']*)')/g;
const reference = /&(#x[0-9a-fA-F]+|#[0-9]+|[^\s;&#]+);/g;
const predefined: ReadonlyMap<string, string> = new Map(Object.entries({ lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" }));

/**
 * The entities that a DOCTYPE's internal part declares, as an object for saxes: each is expanded
 * when it is first asked for, and all together may add only so many characters, so that entities
 * made of entities stay harmless. Those kept in other files are refused: nothing is ever fetched.
 */
export function declaredEntities(doctype: string, problems: Problems, offset: number): Record<string, string> {
    const values = new Map<string, string>();
    for (const [, parameter, name, outside, double, single] of doctype.matchAll(declaration)) {
        if (outside !== undefined) {
            problems.add('refused', name!, phrase`The entity ${name} is kept in another file, which is not opened.`, offset);
        } else if (parameter === undefined && !values.has(name!)) {
            values.set(name!, double ?? single ?? '');
        }
    }
    const expander = new Expander(values, problems, offset);
    // Without a prototype: an entity called `constructor` is not declared by being asked for.
    const entities: Record<string, string> = Object.assign(Object.create(null), Object.fromEntries(predefined));
    for (const name of values.keys()) {
        if (predefined.has(name)) continue;
        Object.defineProperty(entities, name, { get: () => expander.spend(name), enumerable: true });
    }
    return entities;
}

class Expander {
    private readonly known = new Map<string, string>();
    private spent = 0;
    private told = false;

    constructor(
        private readonly values: ReadonlyMap<string, string>,
        private readonly problems: Problems,
        private readonly offset: number,
    ) {}

    /** The entity's text, as long as the allowance lasts; afterwards nothing. */
    spend(name: string): string {
        const text = this.expand(name, 0);
        this.spent += text.length;
        return this.spent > limits.expansion ? this.giveUp() : text;
    }

    private expand(name: string, depth: number): string {
        const known = this.known.get(name);
        if (known !== undefined) return known;
        const value = this.values.get(name);
        if (value === undefined) return predefined.get(name) ?? `&${name};`;
        // An entity that holds itself would go deeper for ever.
        if (depth > 20 || this.spent > limits.expansion) return this.giveUp();
        let out = '';
        let from = 0;
        for (const match of value.matchAll(reference)) {
            out += value.slice(from, match.index) + this.resolve(match[1]!, depth);
            from = match.index + match[0].length;
            if (out.length > limits.expansion) return this.giveUp();
        }
        out += value.slice(from);
        this.spent += out.length;
        this.known.set(name, out);
        return out;
    }

    private resolve(name: string, depth: number): string {
        if (!name.startsWith('#')) return this.expand(name, depth + 1);
        const code = name[1] === 'x' ? Number.parseInt(name.slice(2), 16) : Number.parseInt(name.slice(1), 10);
        return code <= 0x10ffff ? String.fromCodePoint(code) : '';
    }

    private giveUp(): string {
        if (!this.told) {
            this.told = true;
            this.problems.add(
                'too-large',
                'ENTITY',
                phrase`The entities of the DOCTYPE expand to more text than is read.`,
                this.offset,
            );
        }
        this.spent = Number.POSITIVE_INFINITY;
        return '';
    }
}
