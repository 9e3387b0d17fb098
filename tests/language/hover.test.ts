import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { shop } from '../kit/shop';

let kit: MemoryWorkshop;
beforeAll(async () => {
    kit = await memoryWorkshop();
});

/** What is said at `<|>`. */
async function hover(marked: string): Promise<string> {
    const offset = marked.indexOf('<|>');
    const document = await kit.open(marked.replace('<|>', ''));
    const said = await kit.workshop.services.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset),
    });
    return (said?.contents as MarkupContent | undefined)?.value ?? '';
}

const recipe = (body: string) => `${shop}\nrecipe tray { laser shed\n ${body}\n}`;

describe('hover', () => {
    it('a name says what it stands for, with its figures', async () => {
        expect(await hover(recipe('blank b { of walnut-<|>12 }'))).toContain('thickness 12 mm +- 0.3 mm');
    });
    it('built-in stock says where its figures come from', async () => {
        const said = await hover(shop.replace('wood black-walnut', 'wood black-wal<|>nut'));
        expect(said).toContain('wood black-walnut {');
        expect(said).toContain('density 616 kg/m3');
        expect(said).toContain('Juglans nigra');
    });
    it('stock of a kind says what it is like', async () => {
        const said = await hover(recipe('engrave p on b { depth 1 mm } fill p with tide-<|>blue'));
        expect(said).toContain('Like `slow-epoxy`');
        expect(said).toContain('pot life');
    });
    it('a number is told in other units, with its range', async () => {
        const said = await hover(shop.replace('thickness 12 mm', 'thickness 1<|>2 mm'));
        expect(said).toContain('0.4724 in');
        expect(said).toContain('From 11.7 to 12.3 mm.');
    });
    it('a fraction of an inch is told in millimetres', async () => {
        expect(await hover(recipe('engrave p on b { depth 1/1<|>6 in }'))).toMatch(/1\.58[78] mm/);
    });
    it('both sides of a size are told', async () => {
        expect(await hover(shop.replace('field 600 x 400', 'field 600 x 4<|>00'))).toContain('23.62 × 15.75 in');
    });
    it('a word says what it does, with an example', async () => {
        const said = await hover(recipe('engrave p on b { mir<|>ror }'));
        expect(said).toMatch(/^.{10,}\n\n```kerf\nmirror/s);
        expect(await hover(recipe('en<|>grave p on b { }'))).toContain('```kerf\nengrave');
        expect(await hover(shop.replace('top speed', 'to<|>p speed'))).toContain('top speed');
    });
    it('says nothing in comments, strings and blanks', async () => {
        expect(await hover('// a com<|>ment')).toBe('');
        expect(await hover('use "work<|>shop.kerf"')).toBe('');
        expect(await hover('  <|>  ')).toBe('');
    });
    it('never throws, wherever the cursor is, also in half of a sample', async () => {
        const sample = readFileSync(fileURLToPath(new URL('../../samples/heron-tray.kerf', import.meta.url)), 'utf8');
        await fc.assert(
            fc.asyncProperty(fc.nat(sample.length), fc.nat(sample.length), async (cut, at) => {
                const text = sample.slice(0, cut);
                await hover(`${text.slice(0, Math.min(at, cut))}<|>${text.slice(Math.min(at, cut))}`);
            }),
            { numRuns: 60 },
        );
    });
});
