import { readdirSync, readFileSync } from 'node:fs';
import type { LangiumDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import type { CompletionItem } from 'vscode-languageserver';
import { open, services } from './services';

const samples = new URL('../../samples/', import.meta.url);
const files = readdirSync(samples).filter((file) => file.endsWith('.kerf'));

async function proposedAt(document: LangiumDocument, offset: number): Promise<readonly CompletionItem[]> {
    const position = document.textDocument.positionAt(offset);
    const at = { textDocument: { uri: document.uri.toString() }, position };
    await services.lsp.HoverProvider!.getHoverContent(document, at);
    return (await services.lsp.CompletionProvider!.getCompletion(document, at))?.items ?? [];
}

/** What an edit leaves of its line before the cursor, which the proposal goes on from. */
function isAtCursor(document: LangiumDocument, offset: number, { textEdit }: CompletionItem): boolean {
    if (textEdit === undefined || !('range' in textEdit)) return false;
    const { start, end } = textEdit.range;
    const { line } = document.textDocument.positionAt(offset);
    return (
        start.line === line && document.textDocument.offsetAt(start) <= offset && document.textDocument.offsetAt(end) >= offset
    );
}

/** Lines that a sample before this one has too: what is said there was asked for already. */
const looked = new Set<string>();

/** Every place of the lines that are new. */
function placesOf(text: string): number[] {
    let start = 0;
    return text.split('\n').flatMap((line) => {
        const first = start;
        start += line.length + 1;
        if (looked.has(line)) return [];
        looked.add(line);
        return Array.from({ length: line.length + 1 }, (_, at) => first + at);
    });
}

describe('hover and proposals', () => {
    it.each(files)(
        'at every place of %s, for the cursor it is asked for',
        async (file) => {
            const text = readFileSync(new URL(file, samples), 'utf8');
            const document = await open(text);
            for (const offset of placesOf(text)) {
                for (const item of await proposedAt(document, offset))
                    expect(isAtCursor(document, offset, item), `${offset} ${item.label} ${JSON.stringify(item.textEdit)}`).toBe(
                        true,
                    );
            }
        },
        120_000,
    );
    it('at the end of every half of a recipe', async () => {
        const text = readFileSync(new URL('heron-tray.kerf', samples), 'utf8');
        for (let offset = 0; offset <= text.length; offset += 7) {
            const document = await open(text.slice(0, offset), 'file:///shop/half.kerf');
            await proposedAt(document, offset);
        }
    });
    it('where the text is nothing but signs', async () => {
        for (const text of [
            '',
            '{',
            '}}}',
            '"',
            '/*',
            '#',
            'art a #',
            'recipe r { art x "',
            '1/0 1e308',
            '\u0000 {',
            'use use use',
        ])
            for (let offset = 0; offset <= text.length; offset++) await proposedAt(await open(text), offset);
    });
    it('after every first word of a line of a sample as it is typed, that word', async () => {
        const text = readFileSync(new URL('heron-tray.kerf', samples), 'utf8');
        for (const { index, 0: start, 1: word = '' } of text.matchAll(/^ +([a-z]+)(?= )/gm)) {
            const offset = index + start.length - word.length;
            const typed = `${text.slice(0, offset)}${word.slice(0, 2)}${text.slice(text.indexOf('\n', offset))}`;
            const document = await open(typed, 'file:///shop/typed.kerf');
            const found = await proposedAt(document, offset + 2);
            expect(
                found.map(({ label }) => label.split(' ')[0]),
                `${word} at ${offset}`,
            ).toContain(word);
        }
    });
});
