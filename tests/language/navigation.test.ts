import { DocumentState, URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { type SelectionRange, SymbolKind } from 'vscode-languageserver';
import { coloursIn, writtenColour } from '../../language/editor/colours';
import { selectionRanges } from '../../language/editor/selection-ranges';
import { openAt, textIn } from './cursor';
import { open, services } from './services';

const shop = 'laser shed { beam co2  power 45 W }\nboard walnut-12 { wood black-walnut  thickness 12 mm }\n';
const recipe = `${shop}recipe r "A tray" {
  laser shed
  art heron "art/heron.svg"
  blank tray { of walnut-12  size 300 x 200 mm }
  // cut deep
  engrave pocket on tray {
    art heron at 150, 100 mm
    depth 1 mm
  }
  seal tray with shellac
  wait 2 h
}
`;

async function definition(marked: string, uri?: string) {
    const { document, at } = await openAt(marked, uri);
    return { document, links: (await services.lsp.DefinitionProvider!.getDefinition(document, at)) ?? [] };
}

describe('definition', () => {
    it('from a name to its declaration in the file', async () => {
        const { document, links } = await definition(recipe.replace('of walnut', 'of wal<|>nut'));
        expect(textIn(document, links[0]?.targetSelectionRange)).toBe('walnut-12');
    });
    it('into the built-in stock', async () => {
        const { links } = await definition(recipe.replace('with shellac', 'with shel<|>lac'));
        expect(links[0]?.targetUri).toBe('kerfbook-stock:/sealers.kerf');
        const { links: woods } = await definition(recipe.replace('wood black', 'wood bla<|>ck'));
        expect(woods[0]?.targetUri).toBe('kerfbook-stock:/woods.kerf');
    });
    it('across files, also through a file that is used by a used file', async () => {
        await open('board oak { wood white-oak  thickness 9 mm }', 'file:///shop/far.kerf');
        await open('use "far.kerf"', 'file:///shop/near.kerf');
        const { links } = await definition('use "near.kerf"\nrecipe r { blank t { of o<|>ak  size 3 x 4 mm } }');
        expect(links[0]?.targetUri).toBe('file:///shop/far.kerf');
    });
    it('from a path to the file', async () => {
        const { document, links } = await definition(recipe.replace('art/heron.svg', 'art/he<|>ron.svg'));
        expect(links[0]?.targetUri).toBe('file:///shop/art/heron.svg');
        expect(textIn(document, links[0]?.originSelectionRange)).toBe('art/heron.svg');
        expect((await definition('use "wo<|>rk.kerf"')).links[0]?.targetUri).toBe('file:///shop/work.kerf');
    });
    it('nowhere from what is no name', async () =>
        expect((await definition(recipe.replace('wait', 'wa<|>it'))).links).toEqual([]));
});

describe('links', () => {
    it('every path in quotes', async () => {
        const document = await open(`use "a.kerf"\n${recipe}`);
        const links = (await services.lsp.DocumentLinkProvider!.getDocumentLinks(document, { textDocument: { uri: '' } })) ?? [];
        expect(links.map(({ range }) => textIn(document, range))).toEqual(['a.kerf', 'art/heron.svg']);
        expect(links.map(({ target }) => target)).toEqual(['file:///shop/a.kerf', 'file:///shop/art/heron.svg']);
    });
});

describe('references and rename', () => {
    it('finds every place across files', async () => {
        await open(recipe, 'file:///shop/one.kerf');
        const { document, at } = await openAt(shop.replace('board walnut-12', 'board wal<|>nut-12'), 'file:///shop/lib.kerf');
        await open('use "lib.kerf"\nrecipe other { blank t { of walnut-12  size 3 x 4 mm } }', 'file:///shop/two.kerf');
        const found = await services.lsp.ReferencesProvider!.findReferences(document, {
            ...at,
            context: { includeDeclaration: true },
        });
        expect(found.map(({ uri }) => uri).sort()).toEqual(['file:///shop/lib.kerf', 'file:///shop/two.kerf']);
    });
    it('renames a step and what builds on it', async () => {
        const text = recipe.replace('wait 2 h', 'fill pocket with slow-epoxy').replace('engrave pocket', 'engrave poc<|>ket');
        const { document, at } = await openAt(text);
        const edit = await services.lsp.RenameProvider!.rename(document, { ...at, newName: 'hollow' });
        expect(edit?.changes?.[document.uri.toString()]?.map(({ range }) => textIn(document, range))).toEqual([
            'pocket',
            'pocket',
        ]);
    });
    it('refuses names that cannot be read back, and built-in stock', async () => {
        const { document, at } = await openAt(recipe.replace('blank tray', 'blank tr<|>ay'));
        const rename = services.lsp.RenameProvider!;
        await expect(rename.rename(document, { ...at, newName: '3 x' })).rejects.toThrow('letters');
        await expect(rename.rename(document, { ...at, newName: '120' })).rejects.toThrow('letters');
        const other = await openAt(recipe.replace('blank tray', 'blank lid { of walnut-12  size 9 x 9 mm }\n  blank tr<|>ay'));
        await expect(rename.rename(other.document, { ...other.at, newName: 'lid' })).rejects.toThrow('already a blank');
        const stock = await openAt(recipe.replace('with shellac', 'with shel<|>lac'));
        await expect(rename.rename(stock.document, { ...stock.at, newName: 'mine' })).rejects.toThrow('Built-in');
        expect(() => rename.prepareRename(stock.document, stock.at)).toThrow('Built-in');
    });
});

describe('outline and search', () => {
    it('shows entries, parts and steps in the order of the work', async () => {
        const document = await open(recipe);
        const symbols = await services.lsp.DocumentSymbolProvider!.getSymbols(document, { textDocument: { uri: '' } });
        expect(symbols.map(({ name }) => name)).toEqual(['shed', 'walnut-12', 'r']);
        const children = symbols[2]?.children ?? [];
        expect(children.map(({ name }) => name)).toEqual(['heron', 'tray', 'pocket', 'seal tray with shellac', 'wait 2 h']);
        // The kind of thing and what tells it from others; nothing is said twice.
        expect(symbols.map(({ detail }) => detail)).toEqual([
            'laser, 45 W, co2',
            'board, 12 mm, black-walnut',
            'recipe "A tray"',
        ]);
        expect(children.map(({ detail }) => detail)).toEqual([
            'art "art/heron.svg"',
            'blank, walnut-12, 300 x 200 mm',
            'engrave on tray, 1 mm',
            '',
            '',
        ]);
        expect(children.map(({ kind }) => kind).slice(1, 3)).toEqual([SymbolKind.Variable, SymbolKind.Event]);
        for (const { range, selectionRange } of [...symbols, ...children]) {
            expect(textIn(document, range)).toContain(textIn(document, selectionRange));
            expect(textIn(document, selectionRange)).not.toBe('');
        }
    });
    it('finds stock and recipes of the workspace by name', async () => {
        await open('board very-odd-name { wood white-oak  thickness 9 mm }');
        const found = await services.shared.lsp.WorkspaceSymbolProvider!.getSymbols({ query: 'very-odd' });
        expect(found.map(({ name }) => name)).toContain('very-odd-name');
    });
    it('folds blocks and long comments', async () => {
        const document = await open(`/*\n a\n b\n*/\n${recipe}`);
        const folds = (await services.lsp.FoldingRangeProvider!.getFoldingRanges(document, { textDocument: { uri: '' } })) ?? [];
        expect(folds.map(({ startLine, endLine }) => [startLine, endLine])).toEqual(
            expect.arrayContaining([
                [0, 2],
                [6, 16],
                [11, 13],
            ]),
        );
    });
});

describe('colours', () => {
    it('reads and writes them', async () => {
        const document = await open('resin a { colour #1f6f8b }\nwood b { colour #fff  burnt #12345 }');
        const colours = coloursIn(document);
        expect(colours.map(({ range }) => textIn(document, range))).toEqual(['#1f6f8b', '#fff']);
        expect(writtenColour(colours[0]!.color, '#1f6f8b')).toEqual([{ label: '#1f6f8b' }]);
        expect(colours[1]?.color).toEqual({ red: 1, green: 1, blue: 1, alpha: 1 });
    });
    it('keeps capitals, and three digits where they are enough', () => {
        const teal = { red: 0, green: 0x88 / 255, blue: 0x99 / 255, alpha: 1 };
        expect(writtenColour(teal, '#fff')).toEqual([{ label: '#089' }]);
        expect(writtenColour({ ...teal, red: 0xab / 255 }, '#FFF')).toEqual([{ label: '#AB8899' }]);
        expect(writtenColour(teal, '#ffffff')).toEqual([{ label: '#008899' }]);
        expect(writtenColour({ red: 2, green: -1, blue: 0.5, alpha: 1 }, '')).toEqual([{ label: '#ff0080' }]);
    });
});

describe('selection', () => {
    it('widens from the word to the file', async () => {
        const { document, position } = await openAt(recipe.replace('depth 1', 'depth <|>1'));
        const spans: string[] = [];
        for (
            let range: SelectionRange | undefined = selectionRanges(document, [position])[0];
            range !== undefined;
            range = range.parent
        )
            spans.push(textIn(document, range.range));
        expect(spans.slice(0, 3)).toEqual(['1', '1 mm', 'depth 1 mm']);
        expect(spans.at(-1)).toBe(document.textDocument.getText());
        expect(spans.some((span) => span.startsWith('engrave pocket'))).toBe(true);
    });
});

describe('names in colour', () => {
    it('tells declarations, steps and built-in stock apart', async () => {
        const document = await open(recipe);
        const tokens = await services.lsp.SemanticTokenProvider!.semanticHighlight(document, {
            textDocument: { uri: document.uri.toString() },
        });
        expect(tokens.data.length % 5).toBe(0);
        expect(tokens.data.length).toBeGreaterThan(5 * 8);
    });
});

describe('a file that is used', () => {
    it('is looked at again when it changes, and only by those who use it', async () => {
        await open('board ash { wood white-ash  thickness 9 mm }', 'file:///shop/base.kerf');
        const user = await open('use "base.kerf"\nrecipe r { blank t { of ash  size 3 x 4 mm } }', 'file:///shop/user.kerf');
        const other = await open('recipe q { blank t { of nothing-there  size 3 x 4 mm } }', 'file:///shop/other.kerf');
        const { DocumentBuilder } = services.shared.workspace;
        const before = other.references;
        await DocumentBuilder.update([], [URI.parse('file:///shop/base.kerf')]);
        expect(user.state).toBe(DocumentState.Validated);
        expect(user.references.some((reference) => reference.error !== undefined)).toBe(true);
        expect(other.references).toBe(before);
    });
});
