import { describe, expect, it } from 'vitest';
import { DocumentHighlightKind, type FoldingRange, type Location, SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver';
import { openAt, textIn } from './cursor';
import { open, services, start } from './services';

async function references(marked: string, uri: string, includeDeclaration = true): Promise<Location[]> {
    const { document, at } = await openAt(marked, uri);
    return (await services.lsp.ReferencesProvider!.findReferences(document, { ...at, context: { includeDeclaration } })) ?? [];
}

const files = (found: readonly Location[]) => [...new Set(found.map(({ uri }) => uri))].sort();

describe('references', () => {
    it('of built-in stock: in every file that names it, and where it is declared', async () => {
        await open('board first { wood yellow-birch }', 'file:///search/first.kerf');
        const found = await references('board second { wood yellow-b<|>irch }', 'file:///search/second.kerf');
        expect(files(found)).toEqual(['file:///search/first.kerf', 'file:///search/second.kerf', 'kerfbook-stock:/woods.kerf']);
        const named = await references('board second { wood yellow-b<|>irch }', 'file:///search/second.kerf', false);
        expect(files(named)).toEqual(['file:///search/first.kerf', 'file:///search/second.kerf']);
    });
    it('of the built-in declaration itself', async () => {
        await open('board first { wood yellow-birch }', 'file:///search/first.kerf');
        const stock = services.shared.workspace.LangiumDocuments.all.find(
            ({ uri }) => uri.toString() === 'kerfbook-stock:/woods.kerf',
        )!;
        const offset = stock.textDocument.getText().indexOf('wood yellow-birch') + 'wood y'.length;
        const found = await services.lsp.ReferencesProvider!.findReferences(stock, {
            textDocument: { uri: stock.uri.toString() },
            position: stock.textDocument.positionAt(offset),
            context: { includeDeclaration: false },
        });
        expect(files(found ?? [])).toContain('file:///search/first.kerf');
    });
    it('not of a shop’s own stock of the same name', async () => {
        await open('wood yellow-birch { density 700 kg/m3 }\nboard own { wood yellow-birch }', 'file:///search/own.kerf');
        const found = await references('board second { wood yellow-b<|>irch }', 'file:///search/second.kerf');
        expect(files(found)).not.toContain('file:///search/own.kerf');
    });
    it('of a grit, whose name is a number', async () => {
        const found = await references(
            'recipe r { blank b { } sand b { grits 120, 1<|>80 } sand b { grits 180 } }',
            'file:///search/grits.kerf',
            false,
        );
        expect(found.filter(({ uri }) => uri === 'file:///search/grits.kerf')).toHaveLength(2);
    });
    it('none of what is no name', async () =>
        expect(await references('board a { mois<|>ture 8 % }', 'file:///search/none.kerf')).toEqual([]));
});

describe('highlights', () => {
    it('every place in the file, the declaration as such', async () => {
        const text = 'recipe r { blank tray { } engrave pocket on tr<|>ay { depth 1 mm } seal tray with shellac }';
        const { document, at } = await openAt(text);
        const found = (await services.lsp.DocumentHighlightProvider!.getDocumentHighlight(document, at)) ?? [];
        expect(found.map(({ range, kind }) => [textIn(document, range), range.start.character, kind])).toEqual([
            ['tray', 17, DocumentHighlightKind.Write],
            ['tray', 44, DocumentHighlightKind.Read],
            ['tray', 69, DocumentHighlightKind.Read],
        ]);
    });
    it('of built-in stock, the places of this file alone', async () => {
        await open('recipe q { blank b { } seal b with shellac }');
        const { document, at } = await openAt('recipe r { blank b { } seal b with shel<|>lac seal b with shellac }');
        const found = (await services.lsp.DocumentHighlightProvider!.getDocumentHighlight(document, at)) ?? [];
        expect(found.map(({ kind }) => kind)).toEqual([DocumentHighlightKind.Read, DocumentHighlightKind.Read]);
    });
});

async function symbols(query: string): Promise<readonly WorkspaceSymbol[]> {
    await start();
    return services.shared.lsp.WorkspaceSymbolProvider!.getSymbols({ query });
}

describe('search over all files', () => {
    it('finds stock, recipes, their parts and named steps', async () => {
        await open(
            'recipe odd-tray {\n blank odd-blank { }\n art odd-art "a.svg"\n engrave odd-pocket on odd-blank { }\n wait 2 h\n}',
        );
        const found = await symbols('odd-');
        expect(found.map(({ name, kind, containerName }) => [name, kind, containerName])).toEqual([
            ['odd-tray', SymbolKind.Module, undefined],
            ['odd-blank', SymbolKind.Variable, 'odd-tray'],
            ['odd-art', SymbolKind.File, 'odd-tray'],
            ['odd-pocket', SymbolKind.Event, 'odd-tray'],
        ]);
    });
    it('built-in stock behind the shop’s own, and told apart', async () => {
        await open('sealer odd-shellac { kind shellac }');
        const found = (await symbols('shellac')).filter(({ name }) => name.endsWith('shellac'));
        expect(found[0]?.name).toBe('odd-shellac');
        expect(found.find(({ name }) => name === 'shellac')?.containerName).toBe('built-in stock');
    });
    it('by letters in their order, what begins with them first', async () => {
        await open('board further-odd { }\nboard odd-plank { }\nboard dd-plank { }', 'file:///search/order.kerf');
        const names = async (query: string) => (await symbols(query)).map(({ name }) => name);
        expect((await names('dpl')).slice(0, 2)).toEqual(['dd-plank', 'odd-plank']);
        expect(await names('Frt Odd')).toEqual(['further-odd']);
        expect(await names('knalp')).toEqual([]);
        await open('', 'file:///search/order.kerf');
    });
    it('never more than can be read through', async () => {
        await open(Array.from({ length: 1000 }, (_, index) => `board many-${index} { }`).join('\n'), 'file:///search/many.kerf');
        expect((await symbols('many-')).length).toBe(400);
        await open('', 'file:///search/many.kerf');
    });
    it('nothing for what is not there', async () => expect(await symbols('zzqx')).toEqual([]));
});

describe('folding', () => {
    const folds = async (text: string): Promise<FoldingRange[]> =>
        (await services.lsp.FoldingRangeProvider!.getFoldingRanges(await open(text), { textDocument: { uri: '' } })) ?? [];
    it('lines of comment below each other as one, single ones and those behind a line not', async () => {
        const text = '// one\n// two\n// three\nboard a {\n  wood oak // of May\n  // single\n\n  // other\n}\n';
        const comments = (await folds(text)).filter(({ kind }) => kind === 'comment');
        expect(comments.map(({ startLine, endLine }) => [startLine, endLine])).toEqual([[0, 2]]);
    });
    it('blocks up to the line before their brace', async () => {
        const found = await folds('recipe r {\n  blank b { }\n  sand b {\n    take 1 mm\n  }\n}\n');
        expect(found.map(({ startLine, endLine }) => [startLine, endLine])).toEqual([
            [0, 4],
            [2, 3],
        ]);
    });
});
