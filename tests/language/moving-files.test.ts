import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { linkedRanges } from '../../language/editor/linked-editing';
import { openAt, textIn } from './cursor';
import { open, services } from './services';

async function afterMove(text: string, uri: string, files: { oldUri: string; newUri: string }[]): Promise<string> {
    const document = await open(text, uri);
    const edit = await services.shared.lsp.FileOperationHandler!.willRenameFiles!({ files });
    return TextDocument.applyEdits(document.textDocument as TextDocument, edit?.changes?.[uri] ?? []);
}

describe('files that move', () => {
    const uri = 'file:///move/tray.kerf';
    const text = 'use "workshop.kerf"\nrecipe r { art heron "art/my heron.svg" }\n';

    it.each([
        ['file:///move/art/my%20heron.svg', 'file:///move/art/birds/gull.svg', 'art/birds/gull.svg'],
        ['file:///move/art', 'file:///move/pictures', 'pictures/my heron.svg'],
        ['file:///move/art/my%20heron.svg', 'file:///elsewhere/h.svg', '../elsewhere/h.svg'],
    ])('%s: the art is still found', async (oldUri, newUri, path) => {
        expect(await afterMove(text, uri, [{ oldUri, newUri }])).toBe(text.replace('art/my heron.svg', path));
    });

    it('what a recipe uses is found from its new place', async () => {
        expect(await afterMove(text, uri, [{ oldUri: uri, newUri: 'file:///move/gifts/tray.kerf' }])).toBe(
            'use "../workshop.kerf"\nrecipe r { art heron "../art/my heron.svg" }\n',
        );
    });

    it('a file that is renamed is still used, and what moves together is left alone', async () => {
        const renamed = [{ oldUri: 'file:///move/workshop.kerf', newUri: 'file:///move/shop.kerf' }];
        expect(await afterMove(text, uri, renamed)).toBe(text.replace('workshop.kerf', 'shop.kerf'));
        expect(await afterMove(text, uri, [{ oldUri: 'file:///move', newUri: 'file:///moved' }])).toBe(text);
        expect(await afterMove(text, uri, [{ oldUri: 'file:///move/art/my', newUri: 'file:///x' }])).toBe(text);
    });
});

describe('names that change together', () => {
    it('are those that a recipe gives to its own parts', async () => {
        const text =
            'recipe r {\n  blank tray { of b }\n  engrave e on tr<|>ay { depth 1 mm }\n  peel tray\n}\nrecipe s { blank tray { of b } }';
        const { document, position } = await openAt(text);
        const linked = linkedRanges(document, position);
        expect(linked?.ranges.map((range) => textIn(document, range))).toEqual(['tray', 'tray', 'tray']);
        expect(new Set(linked?.ranges.map(({ start }) => start.line))).toEqual(new Set([1, 2, 3]));
    });

    it.each([
        'board b<|> { }\nrecipe r { blank t { of b } }',
        'recipe r { blank t { of b<|> } }',
        'recipe<|> r { }',
        '<|>',
        'recipe r { // tr<|>ay\n}',
    ])('are not %s', async (text) => {
        const { document, position } = await openAt(text);
        expect(linkedRanges(document, position)).toBeUndefined();
    });
});
