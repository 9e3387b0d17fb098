import { describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { openAt } from './cursor';
import { open, services } from './services';

const base = `recipe tray "Tray" {
  art heron "art/heron.svg"
  blank lid { size 300 x 200 mm }
  engrave pocket on lid { art heron  depth 1 mm }
}
`;
const variant = `use "tray-of-names.kerf"
recipe large "Large" based on tray {
  blank lid { size 400 x 300 mm }
  engrave pocket { art heron }
  seal lid with shellac
  after engrave pocket { engrave edge on lid { art heron  depth 1 mm } }
  check edge { width 1 mm }
}
`;
const home = 'file:///shop/tray-of-names.kerf';

async function at(marked: string) {
    await open(base, home);
    return openAt(marked, 'file:///shop/variant-of-names.kerf');
}

describe('names in a variant', () => {
    it.each([
        ['the base, from the head', 'on tr<|>ay', 'recipe tray', 'tray'],
        ['a blank of the base, from the block that adjusts it', 'blank li<|>d', 'blank lid', 'lid'],
        ['and from a step', 'seal li<|>d', 'blank lid', 'lid'],
        ['a step, from behind after', 'after engrave poc<|>ket', 'engrave pocket', 'pocket'],
    ])('lead to %s', async (_what, cursor, declared, name) => {
        const plain = cursor.replace('<|>', '');
        const { at: params } = await at(variant.replace(plain, cursor));
        const links =
            (await services.lsp.DefinitionProvider!.getDefinition((await at(variant.replace(plain, cursor))).document, params)) ??
            [];
        expect(links.map(({ targetUri }) => targetUri)).toEqual([home]);
        const text = base.split('\n')[links[0]!.targetSelectionRange.start.line]!;
        expect(text).toContain(declared);
        expect(text.slice(links[0]!.targetSelectionRange.start.character).startsWith(name)).toBe(true);
    });

    it('new steps of the variant are known in it', async () => {
        const { document } = await at(variant.replace('check ed', 'check e<|>d'));
        expect(document.references.filter(({ error }) => error !== undefined)).toEqual([]);
    });

    it('are renamed together with those of the base, wherever one begins', async () => {
        for (const marked of [variant.replace('blank lid', 'blank l<|>id'), variant.replace('seal lid', 'seal l<|>id')]) {
            const { document, at: params } = await at(marked);
            const edit = await services.lsp.RenameProvider!.rename(document, { ...params, newName: 'board-1' });
            const changes = edit?.changes ?? {};
            expect(changes[home]).toHaveLength(2);
            expect(changes[document.uri.toString()]).toHaveLength(3);
        }
    });

    it('all references of a part of the base, those in its variants too', async () => {
        const { document, at: params } = await openAt(base.replace('blank lid', 'blank l<|>id'), home);
        await open(variant, 'file:///shop/variant-of-names.kerf');
        const found = await services.lsp.ReferencesProvider!.findReferences(document, {
            ...params,
            context: { includeDeclaration: true },
        });
        expect(found).toHaveLength(5);
    });

    it('say on hover what the base says', async () => {
        const { document, at: params } = await at(variant.replace('blank lid', 'blank l<|>id'));
        const hover = await services.lsp.HoverProvider!.getHoverContent(document, params);
        expect((hover!.contents as MarkupContent).value).toContain('size 300 x 200 mm');
    });

    it.each([
        ['recipes behind `based on`', 'recipe other based on <|> { }', ['tray']],
        ['steps of the base behind `after engrave`', 'recipe other based on tray { after engrave <|> { } }', ['pocket']],
        ['blanks of the base behind `seal`', 'recipe other based on tray {\n  seal <|>\n}', ['lid']],
        ['the words of a variant', 'recipe other based on tray {\n  <|>\n}', ['without', 'after', 'before', 'blank']],
    ])('proposes %s', async (_what, marked, wanted) => {
        const { document, at: params } = await at(`use "tray-of-names.kerf"\n${marked}`);
        const list = await services.lsp.CompletionProvider!.getCompletion(document, params);
        const labels = list?.items.map(({ label }) => label) ?? [];
        expect(labels).toEqual(expect.arrayContaining(wanted));
    });

    it('is laid out like other blocks', async () => {
        const { document } = await at(
            'recipe a based on b {\nafter  engrave pocket{\nseal lid   with shellac\n}\nwithout sand   lid #2\n}\n<|>',
        );
        const edits = await services.lsp.Formatter!.formatDocument(document, {
            textDocument: { uri: document.uri.toString() },
            options: { tabSize: 2, insertSpaces: true },
        });
        const laid = TextDocument.applyEdits(document.textDocument, edits);
        expect(laid).toBe(
            'recipe a based on b {\n  after engrave pocket {\n    seal lid with shellac\n  }\n  without sand lid #2\n}\n',
        );
    });
});
