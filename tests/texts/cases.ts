import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, beforeAll, describe, it } from 'vitest';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { diamond, flag, shop } from '../kit/shop';

/** A part of a text behind a line `=== kind words`. */
export interface Expected {
    readonly kind: string;
    /** What stands behind the kind on its line. */
    readonly of: string;
    readonly lines: readonly string[];
}

export interface Case {
    /** The recipe's text, its marks still in it. */
    readonly text: string;
    readonly expected: readonly Expected[];
    readonly kit: MemoryWorkshop;
    /** Where the text belongs, beside its shop. */
    readonly name: string;
}

/**
 * A test for each file in a folder beside this one. The first line says what it shows; `--- name.kerf` begins another file that the
 * text can `use` (`shop.kerf` is always there, with `flag.svg` and `diamond.svg`), `=== kind words` what is expected.
 */
export function eachText(folder: string, examine: (given: Case) => Promise<void>): void {
    const place = new URL(`./${folder}/`, import.meta.url);
    describe(folder, () => {
        let kit: MemoryWorkshop;
        beforeAll(async () => {
            kit = await memoryWorkshop({ 'flag.svg': flag, 'diamond.svg': diamond });
        });
        afterEach(() => kit.forget());
        for (const file of readdirSync(place).filter((name) => name.endsWith('.kerf'))) {
            it(file.replace('.kerf', '').replaceAll('-', ' '), async () => {
                const [recipe = '', ...sections] = readFileSync(new URL(file, place), 'utf8').split(/^=== /m);
                const [text = '', ...others] = recipe.split(/^--- /m);
                await kit.open(shop, 'shop.kerf');
                for (const other of others) {
                    const [name = '', content] = headAndRest(other);
                    await kit.open(content, name);
                }
                const expected = sections.map((section): Expected => {
                    const [head, content] = headAndRest(section);
                    const [kind = '', ...words] = head.split(' ');
                    return { kind, of: words.join(' '), lines: content.trimEnd().split('\n') };
                });
                await examine({ text, expected, kit, name: file });
            });
        }
    });
}

/** A text with `<|>` in it: without it, and where it stood. */
export function cursorIn(text: string): { readonly text: string; readonly offset: number } {
    const offset = text.indexOf('<|>');
    if (offset < 0) throw new Error('There is no <|> in the text.');
    return { text: text.replace('<|>', ''), offset };
}

function headAndRest(part: string): [head: string, rest: string] {
    const end = part.indexOf('\n');
    return [part.slice(0, end).trim(), part.slice(end + 1)];
}
