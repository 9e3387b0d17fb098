import { EmptyFileSystem, type FileSystemNode, type FileSystemProvider, URI, UriUtils } from 'langium';
import { beforeAll, describe, expect, it } from 'vitest';
import { type CompletionItem, CompletionTriggerKind, InsertTextFormat } from 'vscode-languageserver';
import { resolveProposal } from '../../language/editor/lazy-documentation';
import { createKerfServices } from '../../language/module';
import type { KerfServices } from '../../language/services';
import type { Page } from '../../shared/rules/page';

const files = ['art/heron.svg', 'art/gull.png', 'art/notes.txt', 'workshop.kerf', 'old/board.kerf'];

/** The files of a small shop, as a folder would list them. */
class ShopFiles {
    async readDirectory(uri: URI): Promise<FileSystemNode[]> {
        const folder = uri.path.replace(/^\/shop\/?/, '');
        const inside = files.filter((file) => file.startsWith(folder === '' ? '' : `${folder.replace(/\/$/, '')}/`));
        const names = new Set(
            inside.map((file) => file.slice(folder === '' ? 0 : folder.replace(/\/$/, '').length + 1).split('/')[0]!),
        );
        return [...names].map((name) => {
            const isDirectory = !name.includes('.');
            return { uri: UriUtils.joinPath(uri, name), isFile: !isDirectory, isDirectory };
        });
    }
}

const notMirrored: Page = {
    id: 'not-mirrored',
    title: 'Not mirrored',
    severities: ['error'],
    condition: 'When.',
    why: '',
    mend: '',
    source: '',
};
let kerf: KerfServices;
let count = 0;
beforeAll(async () => {
    const empty = EmptyFileSystem.fileSystemProvider();
    const fileSystem = Object.assign(empty, {
        readDirectory: (uri: URI) => new ShopFiles().readDirectory(uri),
    }) as FileSystemProvider;
    const { kerf: made, shared } = createKerfServices(
        { fileSystemProvider: () => fileSystem },
        {
            tradePages: [notMirrored],
            artNames: async (uri) =>
                uri === 'file:///shop/art/heron.svg' ? { ids: ['wing', 'übel', 'leg'], classes: ['reed'] } : undefined,
        },
    );
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    kerf = made;
});

/** What is proposed at `<|>`, best first. */
async function proposals(marked: string, triggerCharacter?: string): Promise<CompletionItem[]> {
    const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = kerf.shared.workspace;
    const offset = marked.indexOf('<|>');
    const document = LangiumDocumentFactory.fromString(marked.replace('<|>', ''), URI.parse(`file:///shop/test-${++count}.kerf`));
    LangiumDocuments.addDocument(document);
    await DocumentBuilder.build([document], { validation: false });
    const list = await kerf.lsp.CompletionProvider!.getCompletion(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset),
        ...(triggerCharacter && { context: { triggerKind: CompletionTriggerKind.TriggerCharacter, triggerCharacter } }),
    });
    return (list?.items ?? []).sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
}

const labels = async (marked: string): Promise<string[]> => (await proposals(marked)).map(({ label }) => label);

const shop = 'laser shed { beam co2  power 45 W }\nboard walnut-12 { wood black-walnut  thickness 12 mm }\n';
const recipe = (body: string) => `${shop}recipe r {\n  laser shed\n  blank tray { of walnut-12 }\n${body}\n}`;

describe('lines of a block', () => {
    it('at the level of the file, its entries with what they are', async () => {
        const all = await proposals('<|>');
        expect(all.map(({ label }) => label)).toEqual(expect.arrayContaining(['use', 'recipe', 'board', 'coupon']));
        expect(all.map(({ label }) => label)).not.toContain('engrave');
        expect(all.every(({ detail }) => (detail ?? '') !== '')).toBe(true);
    });
    it('in a step, its own lines and no other', async () => {
        const found = await labels(recipe('  engrave p on tray {\n    <|>\n    passes 3\n  }'));
        expect(found).toEqual(expect.arrayContaining(['depth', 'scan', 'air', 'mirror', 'allow']));
        expect(found).not.toEqual(expect.arrayContaining(['seal']));
        expect(found).not.toContain('thickness');
    });
    it('not those that are there and may stand once, wherever in the block they stand', async () => {
        const found = await labels(recipe('  engrave p on tray {\n    passes 3\n    art a\n    <|>\n    depth 1 mm\n  }'));
        expect(found).not.toContain('passes');
        expect(found).not.toContain('depth');
        expect(found).toEqual(expect.arrayContaining(['art', 'outline', 'allow']));
        expect(await labels(recipe('  <|>'))).not.toContain('laser');
        expect(await labels('board a { wood oak  <|>  moisture 8 % }')).toEqual([
            'thickness',
            'varies',
            'sheet',
            'made of',
            'treated with',
            'sawn',
            'price',
            'bought',
            'on hand',
            'offcut',
            'lot',
        ]);
    });
    it('but the one that is being written', async () => {
        expect(await labels('board a {\n  moi<|>sture 8 %\n}')).toEqual(['moisture']);
        expect(await labels(recipe('  engrave p on tray {\n    pass<|>\n    depth 1 mm\n  }'))).toContain('passes');
    });
    it('as snippets where the editor takes them, in its own words where it does not', async () => {
        const [plain] = (await proposals('board a { thick<|> }')).filter(({ label }) => label === 'thickness');
        expect(plain?.insertTextFormat).not.toBe(InsertTextFormat.Snippet);
        const withSnippets = { textDocument: { completion: { completionItem: { snippetSupport: true } } } };
        kerf.shared.lsp.LanguageServer.initialize({ capabilities: withSnippets, processId: null, rootUri: null });
        const [snippet] = (await proposals('board a { thick<|> }')).filter(({ label }) => label === 'thickness');
        // biome-ignore lint/suspicious/noTemplateCurlyInString: a snippet in the editor's own syntax.
        expect(snippet?.textEdit?.newText).toBe('thickness ${1:12 mm +- 0.3 mm}');
    });
    it('two-word properties whole', async () => expect(await labels('laser a {\n  to<|>\n}')).toContain('top speed'));
    it('behind broken lines as if they were whole', async () => {
        expect(await labels(recipe('  engrave p on tray {\n    dept 3 %%\n    depth\n    sc<|>\n  }'))).toContain('scan');
    });
    it('inside a half-written statement, how it goes on', async () => {
        expect(await labels(recipe('  engrave p on tray { scan <|> }'))).toEqual(['across', 'along', 'at']);
        expect((await labels(recipe('  seal tray <|>')))[0]).toBe('with');
        expect(await labels('laser a {\n  least <|>\n}')).toEqual(['power']);
        const corners = ['lower-left', 'lower-right', 'middle', 'upper-left', 'upper-right'];
        expect((await labels('laser a { zero <|> }')).toSorted()).toEqual(corners);
        expect(await labels('laser a {\n  ze<|>\n}')).toContain('zero');
        expect((await labels('laser a { output <|> }')).toSorted()).toEqual(['constant', 'with-speed']);
        expect(await labels('laser a {\n  fu<|>\n}')).toContain('full output');
    });
    it('nothing in comments and in texts', async () => {
        expect(await labels('// re<|>')).toEqual([]);
        expect(await labels('/* <|> */')).toEqual([]);
        expect(await labels(recipe('  do "wi<|>"'))).toEqual([]);
    });
});

describe('names', () => {
    it('of the right kind only, with their figures', async () => {
        const [first, ...others] = await proposals(recipe('  blank lid { of <|> }'));
        expect(first).toMatchObject({ label: 'walnut-12', detail: 'board · 12 mm, black-walnut' });
        expect(others.map(({ label }) => label)).not.toContain('shed');
    });
    it('by any of the words they are made of', async () => {
        expect(await labels('board b { wood waln<|> }')).toEqual(['black-walnut']);
        expect(await labels(recipe('  blank lid { of 12<|> }'))).not.toContain('black-walnut');
    });
    it('own ones before built-in ones', async () => {
        const found = await labels(
            `resin tide { kind slow-epoxy }\n${recipe('  engrave p on tray { depth 1 mm }\n  fill p with <|>')}`,
        );
        expect(found[0]).toBe('tide');
        expect(found).toContain('slow-epoxy');
    });
    it('grits from coarse to fine', async () => {
        const found = await labels(recipe('  sand tray { grits 120, <|> }'));
        expect(found.indexOf('80')).toBeLessThan(found.indexOf('240'));
        expect(found.indexOf('240')).toBeLessThan(found.indexOf('1000') < 0 ? 999 : found.indexOf('1000'));
    });
    it('rules after allow, with a place for the reason', async () => {
        const [first] = await proposals(recipe('  engrave p on tray { allow <|> }'));
        expect(first).toMatchObject({ label: 'not-mirrored', detail: 'Not mirrored' });
    });
});

describe('names in detail', () => {
    it('say what they stand for once they are looked at', async () => {
        const [board] = await proposals(recipe('  blank lid { of <|> }'));
        expect(board?.documentation).toBeUndefined();
        const { documentation } = resolveProposal(board!, kerf);
        expect(documentation).toMatchObject({ kind: 'markdown', value: expect.stringContaining('thickness 12 mm') });
    });
    it('stay as they are when the file has gone, or when they are no names', () => {
        const gone = { label: 'a', data: { uri: 'file:///shop/gone.kerf', path: '/entries@0' } };
        expect(resolveProposal(gone, kerf)).toBe(gone);
        expect(resolveProposal({ label: 'b' }, kerf)).toEqual({ label: 'b' });
        expect(resolveProposal({ label: 'c', data: 'odd' }, kerf)).toEqual({ label: 'c', data: 'odd' });
    });
    it('of each kind after its word', async () => {
        const step = '  engrave pocket on tray { depth 1 mm }\n  cut edge on tray { circle 3 mm }\n';
        expect(await labels(recipe(`${step}  engrave q on <|> { }`))).toEqual(['tray']);
        expect(await labels(recipe(`${step}  fill <|>`))).toEqual(['pocket']);
        expect(await labels(recipe(`${step}  inlay pocket into <|>`))).toEqual(['edge', 'pocket']);
        expect(await labels(recipe(`${step}  check <|> { }`))).toEqual(['edge', 'pocket']);
        expect(await labels('board b { wood <|> }')).toContain('black-walnut');
        expect(await labels('laser l { beam <|> }')).toContain('co2');
        expect(await labels(recipe(`${step}  seal tray with <|>`))).toContain('shellac');
        expect(await labels(recipe(`${step}  seal tray with <|>`))).not.toContain('slow-epoxy');
    });
});

describe('parts of the art', () => {
    const body = (line: string) => recipe(`  art heron "art/heron.svg"\n  engrave p on tray { ${line} }`);
    it('by id and class, those that can be written', async () => {
        expect(await labels(body('art heron <|>'))).toEqual(expect.arrayContaining(['#wing', '#leg', '.reed']));
        expect(await labels(body('art heron <|>'))).not.toContain('#übel');
    });
    it('in place of the sign that was typed', async () => {
        const text = body('art heron #<|>');
        const [first] = await proposals(text, '#');
        const start = text.split('\n').at(-2)!.indexOf('#');
        expect(first).toMatchObject({ label: '#leg', textEdit: { range: { start: { character: start } } } });
        expect((await proposals(body('art heron #<|>'), '#')).every(({ label }) => label.startsWith('#'))).toBe(true);
        expect((await proposals(body('art heron .<|>'), '.')).map(({ label }) => label)).toEqual(['.reed']);
    });
    it('not twice, and none of art that cannot be read', async () => {
        expect(await labels(body('art heron #wing <|>'))).not.toContain('#wing');
        expect((await labels(body('art heron <|>').replace('heron.svg', 'gone.svg'))).join()).not.toContain('#');
    });
});

describe('while typing', () => {
    it('a blank opens what is wanted behind a word or number, never the next line', async () => {
        expect((await proposals('board a { thickness 12 <|> }', ' ')).map(({ label }) => label)).toContain('mm');
        expect((await proposals(recipe('  blank b { of <|> }'), ' ')).map(({ label }) => label)).toContain('walnut-12');
        expect(await proposals('board a { thickness 12 mm <|> }', ' ')).toEqual([]);
        expect(await proposals('board a {\n  <|>\n}', ' ')).toEqual([]);
    });
    it('the point of a number opens nothing', async () =>
        expect(await proposals('board a { thickness 0.<|> }', '.')).toEqual([]));
});

describe('units', () => {
    it('of the kind the line wants, likeliest first, with what they come to', async () => {
        const found = await proposals('board a { thickness 12 <|> }');
        expect(found[0]).toMatchObject({ label: 'mm' });
        expect(found.find(({ label }) => label === 'cm')?.detail).toBe('12 cm = 120 mm');
        expect(found.map(({ label }) => label)).not.toContain('s');
    });
    it('by the magnitude: 0.5 of a board is not millimetres', async () => {
        expect((await labels('board a { thickness 0.5 <|> }'))[0]).not.toBe('mm');
    });
    it('inside a burn row', async () => expect((await labels('coupon a on b { burn 40 <|> }')).slice(0, 2)).toEqual(['%', 'W']));
    it('for the second number of a size', async () => expect((await labels('blank a { size 3 x 4 <|> }'))[0]).not.toBe('s'));
    it('for the second number of a place, from which the first one takes its own', async () => {
        const found = await proposals('recipe r { engrave e on b { art heron at 150, 4 <|> } }');
        expect(found.find(({ label }) => label === 'cm')?.detail).toBe('4 cm = 40 mm');
        expect(found.map(({ label }) => label)).toContain('mm');
        expect(found.map(({ label }) => label)).not.toContain('s');
    });
    it('words out of a list', async () => expect(await labels('beam a { foil <|> }')).toEqual(['fails', 'stops']));
    it('the codes of currencies, by name', async () => {
        const found = await proposals('shop a { currency <|> }');
        expect(found.find(({ label }) => label === 'EUR')?.detail).toBe('Euro');
    });
    it('sheets or an area after the price of a board', async () => {
        expect(await labels('board a { price 9 for 1 <|> }')).toEqual(expect.arrayContaining(['sheet', 'm2']));
    });
});

describe('files', () => {
    it('folders and art in the quotes of art', async () => {
        expect(await labels('recipe r { art heron "<|>" }')).toEqual(expect.arrayContaining(['art/', 'old/']));
        expect((await labels('recipe r { art heron "<|>" }')).slice(0, 2).sort()).toEqual(['art/gull.png', 'art/heron.svg']);
        const inside = await proposals('recipe r { art heron "art/h<|>" }');
        expect(inside.map(({ label }) => label)).toEqual(['art/heron.svg', 'art/gull.png']);
        expect(inside[0]?.textEdit).toMatchObject({
            newText: '"art/heron.svg"',
            range: { start: { character: 21 }, end: { character: 28 } },
        });
    });
    it('recipe files in the quotes of use', async () => {
        const found = await labels('use "<|>"');
        expect(found).toContain('workshop.kerf');
        expect(found).not.toContain('art/heron.svg');
    });
});
