import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
    CodeLens,
    DocumentDiagnosticReport,
    Hover,
    InitializeResult,
    LinkedEditingRanges,
    Location,
    MarkupContent,
    SemanticTokens,
    TextDocumentContentResult,
    TextEdit,
    TypeHierarchyItem,
    WorkspaceDiagnosticReport,
    WorkspaceEdit,
} from 'vscode-languageserver';
import { capabilityTable } from '../kit/capability-table';
import { LanguageClient } from '../kit/language-client';

const workshop =
    'laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }\nboard b { wood black-walnut  thickness 12 mm }\n';
const recipe = (name: string) =>
    `use "workshop.kerf"\nrecipe ${name} {\n  laser shed\n  blank t { of b  size 100 x 80 mm }\n  engrave e on t {\n    circle 20 mm at 50, 40 mm\n    depth 0.3 mm\n  }\n}\n`;
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-features-'));
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();

let client: LanguageClient;
let answer: InitializeResult;
beforeAll(async () => {
    writeFileSync(path.join(folder, 'workshop.kerf'), workshop);
    for (let index = 0; index < 8; index++) writeFileSync(path.join(folder, `r${index}.kerf`), recipe(`r-${index}`));
    writeFileSync(path.join(folder, 'wrong.kerf'), recipe('w').replace('of b ', 'of bb '));
    ({ client } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), {
        textDocument: { diagnostic: {} },
        workspace: { diagnostics: { refreshSupport: true }, codeLens: { refreshSupport: true } },
        options: { commands: ['kerfbook.writeFiles'] },
    }));
});
afterAll(() => {
    client.stop();
    rmSync(folder, { recursive: true, force: true });
});

const ask = <T>(method: string, params: object): Promise<T> => client.connection.sendRequest<T>(method, params);

async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
    for (let left = 300; !(await holds()); left--) {
        if (left === 0) throw new Error('It never came.');
        await new Promise((resolve) => setTimeout(resolve, 50));
    }
}

describe('the table of features in the docs', () => {
    /** An editor that has all that the server asks for, and no buttons of its own. */
    let other: LanguageClient;
    beforeAll(async () => {
        ({ client: other, answer } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), {
            textDocument: {
                diagnostic: {},
                codeAction: { dataSupport: true, resolveSupport: { properties: ['edit'] } },
            },
            workspace: { executeCommand: {} },
        }));
    });
    afterAll(() => other.stop());

    it('says what the server itself says', () => {
        const page = readFileSync(new URL('../../extension/docs/editors.md', import.meta.url), 'utf8');
        const table = capabilityTable(answer.capabilities);
        expect(page, `\n${table}\n`).toContain(`\n${table}\n`);
    });

    it('claims nothing that the server denies', () => {
        const { semanticTokensProvider } = answer.capabilities;
        expect(semanticTokensProvider?.full).toEqual({ delta: false });
        const page = readFileSync(new URL('../../extension/docs/editors.md', import.meta.url), 'utf8');
        expect(page.split('\n').find((line) => line.includes('semanticTokensProvider'))).not.toContain('changes');
        const offered = {
            semanticTokensProvider: { legend: { tokenTypes: [], tokenModifiers: [] }, full: { delta: true }, range: true },
        };
        expect(capabilityTable(offered)).toContain('file, range, changes');
    });
});

describe('a client that asks for findings', () => {
    it('gets them for a file, once, and is sent none', async () => {
        const textDocument = { uri: uriOf('wrong.kerf') };
        const first = await ask<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument });
        expect(first.kind === 'full' && first.items.map(({ code }) => code)).toContain('unknown-name');
        await until(async () => {
            const before = await ask<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument });
            const again = await ask<DocumentDiagnosticReport>('textDocument/diagnostic', {
                textDocument,
                previousResultId: before.resultId!,
            });
            return again.kind === 'unchanged';
        });
        expect(client.sent(textDocument.uri)).toBe(0);
    });

    it('is told to ask again when the trade has spoken, and then hears it', async () => {
        const textDocument = { uri: uriOf('r0.kerf') };
        await client.open(textDocument.uri, recipe('r-0'));
        await until(() => client.diagnosticRefreshes > 0);
        await until(async () => {
            const report = await ask<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument });
            return report.kind === 'full' && report.items.some(({ code }) => code === 'no-coupon');
        });
    });

    it('gets the whole workspace, and what has not changed not twice', async () => {
        const { items } = await ask<WorkspaceDiagnosticReport>('workspace/diagnostic', { previousResultIds: [] });
        expect(items.map(({ uri }) => uri)).toEqual(expect.arrayContaining([uriOf('wrong.kerf'), uriOf('r7.kerf')]));
        expect(items.every(({ uri }) => uri.startsWith('file:'))).toBe(true);
        const previousResultIds = [
            ...items.map(({ uri, resultId }) => ({ uri, value: resultId! })),
            { uri: uriOf('gone.kerf'), value: '1' },
        ];
        await until(async () => {
            const next = await ask<WorkspaceDiagnosticReport>('workspace/diagnostic', { previousResultIds });
            const gone = next.items.find(({ uri }) => uri === uriOf('gone.kerf'));
            expect(gone).toMatchObject({ kind: 'full', items: [] });
            return next.items.some(({ kind }) => kind === 'unchanged');
        });
    });
});

describe('what is based on what', () => {
    const workshop = `resin mine { kind slow-epoxy }
resin yours { kind mine }
recipe tray { issue 1 }
recipe small based on tray { }
recipe smaller based on small { }
`;
    const uri = uriOf('variants.kerf');
    const namesOf = async (method: string, item: TypeHierarchyItem) =>
        (await ask<TypeHierarchyItem[]>(`typeHierarchy/${method}`, { item })).map(({ name }) => name);
    const at = async (words: string): Promise<TypeHierarchyItem> => {
        const line = workshop.split('\n').findIndex((each) => each.includes(words));
        const character = workshop.split('\n')[line]!.indexOf(words) + words.length - 1;
        const method = 'textDocument/prepareTypeHierarchy';
        const [item] = await ask<TypeHierarchyItem[]>(method, { textDocument: { uri }, position: { line, character } });
        return item!;
    };
    beforeAll(() => client.open(uri, workshop));
    afterAll(() => client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } }));

    it('leads from a variant to its base and to its own variants', async () => {
        const small = await at('recipe small');
        expect(small).toMatchObject({ name: 'small', uri });
        expect(await namesOf('supertypes', small)).toEqual(['tray']);
        expect(await namesOf('subtypes', small)).toEqual(['smaller']);
        // The name of a base stands for it.
        expect((await at('based on small')).name).toBe('small');
    });

    it('leads from stock to its kind, into what is built in, and back', async () => {
        const mine = await at('kind mine');
        expect(mine.name).toBe('mine');
        expect(await namesOf('subtypes', mine)).toEqual(['yours']);
        const [epoxy] = await ask<TypeHierarchyItem[]>('typeHierarchy/supertypes', { item: mine });
        expect(epoxy).toMatchObject({ name: 'slow-epoxy', uri: 'kerfbook-stock:/resins.kerf' });
        expect(await namesOf('subtypes', epoxy!)).toContain('mine');
    });

    it('is nothing for what is gone', async () => {
        const item = { ...(await at('recipe small')), uri: uriOf('gone.kerf') };
        expect(await namesOf('supertypes', item)).toEqual([]);
        expect(await namesOf('subtypes', item)).toEqual([]);
    });
});

describe('over the wire', () => {
    it('built-in stock, to which a definition leads, and the pages of rules open as texts', async () => {
        const textDocument = { uri: uriOf('workshop.kerf') };
        const position = { line: 1, character: workshop.split('\n')[1]!.indexOf('walnut') };
        const [there] = await ask<Location[]>('textDocument/definition', { textDocument, position });
        const uri = (there as Location & { targetUri?: string }).targetUri ?? there!.uri;
        const method = 'workspace/textDocumentContent';
        const { text } = await ask<TextDocumentContentResult>(method, { uri });
        expect(text.slice(0, text.indexOf('{', text.indexOf('wood black-walnut')))).toContain('wood black-walnut');
        const page = await ask<TextDocumentContentResult>(method, { uri: 'kerfbook-page:/not-mirrored.md' });
        expect(page.text).toContain('not-mirrored');
        for (const nowhere of ['kerfbook-page:/no-such-rule.md', 'kerfbook-stock:/../woods.kerf', uriOf('workshop.kerf')])
            await expect(ask(method, { uri: nowhere })).rejects.toThrow('There is no text at');
    });

    it('a recipe has its time, its quantities and its command above it', async () => {
        const textDocument = { uri: uriOf('r1.kerf') };
        await client.open(textDocument.uri, recipe('r-1'));
        let lenses: CodeLens[] = [];
        await until(async () => {
            lenses = await ask<CodeLens[]>('textDocument/codeLens', { textDocument });
            return lenses.length >= 3;
        });
        expect(lenses[0]!.command!.title).toMatch(/of laser, .* attended, ready after/);
        expect(lenses[1]!.command!.title).toContain('b 1');
        expect(lenses.at(-1)!.command).toMatchObject({ command: 'kerfbook.writeFiles', arguments: [textDocument.uri, 'r-1'] });
        expect(lenses.some(({ command }) => command?.command === 'kerfbook.openBenchViewToSide')).toBe(false);
    });

    it('names are coloured in a file and in a part of it', async () => {
        const textDocument = { uri: uriOf('r2.kerf') };
        const { data } = await ask<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
        expect(data.length / 5).toBeGreaterThanOrEqual(6);
        const range = { start: { line: 2, character: 0 }, end: { line: 3, character: 0 } };
        const part = await ask<SemanticTokens>('textDocument/semanticTokens/range', { textDocument, range });
        expect(part.data.length).toBeLessThan(data.length);
        expect(part.data.length).toBeGreaterThan(0);
    });

    it('layout of a range and of a brace stays where it was asked for', async () => {
        const uri = uriOf('layout.kerf');
        await client.open(uri, 'board a {\n      wood black-walnut\n}\nboard b {\n      wood black-walnut\n      }\n');
        const options = { tabSize: 2, insertSpaces: true };
        const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 8 } };
        const inRange = await ask<TextEdit[]>('textDocument/rangeFormatting', { textDocument: { uri }, range, options });
        expect(new Set(inRange.flatMap((edit) => [edit.range.end.line]))).toEqual(new Set([1]));
        const position = { line: 5, character: 7 };
        const typed = await ask<TextEdit[]>('textDocument/onTypeFormatting', {
            textDocument: { uri },
            position,
            ch: '}',
            options,
        });
        expect(typed.map((edit) => edit.range.end.line)).toEqual([5]);
    });

    it('a name is looked for, linked and renamed, across files too', async () => {
        const at = { textDocument: { uri: uriOf('workshop.kerf') }, position: { line: 0, character: 7 } };
        const found = await ask<Location[]>('textDocument/references', { ...at, context: { includeDeclaration: false } });
        expect(new Set(found.map(({ uri }) => uri)).size).toBe(9);
        expect(await ask('textDocument/prepareRename', at)).toMatchObject({ start: { line: 0, character: 6 } });
        const { changes } = await ask<WorkspaceEdit>('textDocument/rename', { ...at, newName: 'loft' });
        expect(Object.keys(changes!)).toHaveLength(10);
        const linked = await ask<LinkedEditingRanges>('textDocument/linkedEditingRange', {
            textDocument: { uri: uriOf('r3.kerf') },
            position: { line: 3, character: 8 },
        });
        expect(linked.ranges).toHaveLength(2);
    });

    it('a file that is about to move takes what leads to it along', async () => {
        const files = [{ oldUri: uriOf('workshop.kerf'), newUri: uriOf('shop/workshop.kerf') }];
        const { changes } = await ask<WorkspaceEdit>('workspace/willRenameFiles', { files });
        expect(Object.keys(changes!)).toHaveLength(9);
        expect(changes![uriOf('r4.kerf')]![0]!.newText).toBe('shop/workshop.kerf');
    });

    it('the fit of a coupon is told where the cursor rests', async () => {
        const row = (power: number, depth: number) => `  burn ${power} % at 300 mm/s gives ${depth} mm\n`;
        const text = `${workshop}coupon b on shed {\n  pitch 0.1 mm\n${row(40, 0.1)}${row(60, 0.2)}${row(80, 0.3)}}\n`;
        await client.open(uriOf('coupon.kerf'), text);
        const at = { textDocument: { uri: uriOf('coupon.kerf') }, position: { line: 2, character: 7 } };
        const hover = await ask<Hover>('textDocument/hover', at);
        expect((hover.contents as MarkupContent).value).toMatch(/threshold dose: [\d.]+ ± [\d.]+ J\/mm²/);
    });

    it('a question that is taken back is answered as such', async () => {
        await client.change(uriOf('layout.kerf'), 2, workshop.repeat(400));
        const { CancellationTokenSource } = await import('vscode-languageserver/node');
        const source = new CancellationTokenSource();
        const params = { textDocument: { uri: uriOf('layout.kerf') }, position: { line: 1, character: 8 } };
        const asked = client.connection.sendRequest('textDocument/hover', params, source.token);
        source.cancel();
        await expect(asked).rejects.toMatchObject({ code: -32800 });
    });
});
