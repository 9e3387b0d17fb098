import { URI } from 'langium';
import { beforeAll, expect, it } from 'vitest';
import { insertArt } from '../../language/editing/insert-art';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';

let kit: MemoryWorkshop;
beforeAll(async () => {
    kit = await memoryWorkshop();
});

/** The text after files are dropped at the mark `|`. */
async function dropped(marked: string, ...files: string[]): Promise<string | undefined> {
    const offset = marked.indexOf('|');
    const text = marked.replace('|', '');
    const document = await kit.open(text);
    const uris = files.map((file) => URI.parse(`file:///shop/${file}`));
    const edits = insertArt(document, offset, uris, kit.workshop.services);
    return edits
        ?.toSorted((a, b) => b.offset - a.offset)
        .reduce((now, { offset: at, length, text: put }) => now.slice(0, at) + put + now.slice(at + length), text);
}

it('declares art below the art that is there', async () => {
    expect(await dropped('recipe a {\n  laser shed\n  art x "x.svg" {\n    width 3 mm\n  }\n|\n}\n', 'art/gull two.svg')).toBe(
        'recipe a {\n  laser shed\n  art x "x.svg" {\n    width 3 mm\n  }\n  art gull-two "art/gull two.svg"\n\n}\n',
    );
});
it('declares it below the laser, or first, where there is none', async () => {
    expect(await dropped('recipe a {\n  laser shed\n\n  |blank b { }\n}\n', 'tern.png')).toContain(
        'laser shed\n  art tern "tern.png"\n\n',
    );
    expect(await dropped('recipe a {|\n}\n', 'tern.png')).toBe('recipe a {\n  art tern "tern.png"\n}\n');
});
it('uses it in the step on which it is dropped, below the art that it has', async () => {
    const text = 'recipe a {\n  laser l\n  engrave p on b {\n    art old\n    depth 1| mm\n  }\n}\n';
    expect(await dropped(text, 'new.svg')).toBe(
        'recipe a {\n  laser l\n  art new "new.svg"\n  engrave p on b {\n    art old\n    art new\n    depth 1 mm\n  }\n}\n',
    );
    expect(await dropped('recipe a {\n  laser l\n  cut p on b { |air on }\n}\n', 'new.svg')).toContain(
        'cut p on b { air on  art new }',
    );
});
it('uses art that is declared already, in the base too, without declaring it again', async () => {
    const base = 'recipe a {\n  laser l\n  art heron "art/heron.svg"\n  engrave p on b {\n    air off\n  }\n}\n';
    expect(await dropped(base.replace('air', '|air'), 'art/heron.svg')).toBe(base.replace('air off', 'air off\n    art heron'));
    const variant = `${base}recipe c based on a {\n  engrave p {\n    |air on\n  }\n}\n`;
    expect(await dropped(variant, 'art/heron.svg')).toContain('air on\n    art heron\n');
});
it('gives each a name of its own that the language can read back', async () => {
    const text = 'recipe a {\n  art gull "gull.svg"\n|}\n';
    const after = await dropped(text, 'art/gull.svg', 'art/gull.png', '../7.svg', 'art.svg');
    expect(after).toContain(
        '  art gull-2 "art/gull.svg"\n  art gull-3 "art/gull.png"\n  art art-7 "../7.svg"\n  art art-2 "art.svg"\n',
    );
    const document = await kit.open(after!);
    expect(document.parseResult.parserErrors).toEqual([]);
});
it('keeps the file’s line breaks, and does nothing without a recipe', async () => {
    expect(await dropped('recipe a {\r\n  laser l\r\n|}\r\n', 'tern.svg')).toBe(
        'recipe a {\r\n  laser l\r\n  art tern "tern.svg"\r\n}\r\n',
    );
    expect(await dropped('board a { |}\n', 'x.svg')).toBeUndefined();
});
