import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { ErrorCodes, type InitializeResult, LSPErrorCodes, ResponseError } from 'vscode-languageserver/node';
import { fits } from '../../server/protocol/params';
import { requests } from '../../shared/view/requests';
import { WireServer } from '../kit/wire-server';

const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-protocol-'));
const folderUri = pathToFileURL(folder).toString();
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();
const shop =
    'laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }\nboard oak { wood white-oak  thickness 12 mm  moisture 8 % }\n';
const recipe = (name: string) =>
    `use "shop.kerf"\nrecipe ${name} {\n  laser shed\n  blank lid { of oak  size 100 x 80 mm }\n  engrave eye on lid {\n    circle 20 mm at 50, 40 mm\n    depth 0.3 mm\n  }\n}\n`;
writeFileSync(path.join(folder, 'shop.kerf'), shop);
for (let index = 0; index < 8; index++) writeFileSync(path.join(folder, `r${index}.kerf`), recipe(`r-${index}`));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let server: WireServer;
afterEach(() => server.stop());

const hover = (name: string) => ({ textDocument: { uri: uriOf(name) }, position: { line: 2, character: 8 } });
const codeOf = (asked: Promise<unknown>): Promise<unknown> =>
    asked.then(
        () => 'answered',
        (error: { code?: number }) => error.code,
    );

describe('the order of the protocol', () => {
    it('nothing is answered before initialize, and the server lives', async () => {
        server = new WireServer();
        for (const [name, params] of [
            ['textDocument/hover', hover('r0.kerf')],
            ['shutdown', undefined],
            [requests.bench.method, { uri: uriOf('r0.kerf') }],
        ] as const)
            expect(await codeOf(server.connection.sendRequest(name, params)), name).toBe(ErrorCodes.ServerNotInitialized);
        await server.initialize(folderUri, {});
        expect(await codeOf(server.connection.sendRequest('textDocument/hover', hover('r0.kerf')))).toBe('answered');
    });

    it('initialize comes once', async () => {
        server = new WireServer();
        const { capabilities } = await server.initialize(folderUri, {});
        expect(capabilities.hoverProvider).toBe(true);
        const again = server.connection.sendRequest('initialize', { processId: null, rootUri: null, capabilities: {} });
        expect(await codeOf(again)).toBe(ErrorCodes.InvalidRequest);
        expect(await codeOf(server.connection.sendRequest('textDocument/hover', hover('r0.kerf')))).toBe('answered');
    });

    it('after shutdown there is nothing but exit', async () => {
        server = new WireServer();
        await server.initialize(folderUri, {});
        expect(await server.connection.sendRequest<null>('shutdown', undefined)).toBeNull();
        expect(await codeOf(server.connection.sendRequest('textDocument/hover', hover('r0.kerf')))).toBe(
            ErrorCodes.InvalidRequest,
        );
        expect(await codeOf(server.connection.sendRequest('shutdown'))).toBe(ErrorCodes.InvalidRequest);
        await server.connection.sendNotification('exit');
        expect(await server.ended).toBe(0);
    });
});

describe('parameters that are none', () => {
    const toAnswer = Object.values(requests).map(({ method }) => method);

    it('are told as such, for each request, and the server lives', async () => {
        server = new WireServer();
        expect(await codeOf(server.connection.sendRequest('initialize', {}))).toBe(ErrorCodes.InvalidParams);
        const { capabilities } = await server.initialize(folderUri, { textDocument: { diagnostic: {} } });
        for (const name of [...requestsOf(capabilities), ...toAnswer]) {
            for (const params of [
                {},
                { textDocument: { uri: 7 }, position: null },
                { textDocument: { uri: 'not an address' }, uri: 3 },
            ])
                expect(await codeOf(server.connection.sendRequest(name, params)), `${name} ${JSON.stringify(params)}`).toBe(
                    ErrorCodes.InvalidParams,
                );
        }
        for (const name of ['didOpen', 'didChange', 'didClose', 'didSave']) {
            await server.connection.sendNotification(`textDocument/${name}`, {});
            await server.connection.sendNotification(`textDocument/${name}`, { textDocument: null });
        }
        await server.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: 'all' });
        expect(await codeOf(server.connection.sendRequest('textDocument/hover', hover('r0.kerf')))).toBe('answered');
        expect(server.complaints).toBe('');
    });

    it('no request of our own is left out, and nothing is asked of messages that are not ours', () => {
        for (const name of toAnswer) expect(fits(name, {}), name).toBe(false);
        for (const name of ['shutdown', 'initialized', 'toString', 'kerfbook/none'])
            expect(fits(name, undefined), name).toBe(true);
    });
});

it('of a file that is not known there is nothing to say', async () => {
    server = new WireServer();
    const { capabilities } = await server.initialize(folderUri, { textDocument: { diagnostic: {} } });
    const params = {
        ...{
            textDocument: { uri: uriOf('none.kerf') },
            position: { line: 0, character: 0 },
            positions: [{ line: 0, character: 0 }],
        },
        ...{
            range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
            options: { tabSize: 2, insertSpaces: true },
        },
        ...{ context: { diagnostics: [], includeDeclaration: true }, newName: 'other', ch: '}' },
        ...{ color: { red: 0, green: 0, blue: 0, alpha: 1 }, previousResultId: '', ranges: [] },
    };
    for (const name of requestsOf(capabilities).filter((each) => each.startsWith('textDocument/'))) {
        const answer = await server.connection.sendRequest(name, params);
        if (name === 'textDocument/diagnostic') expect(answer).toEqual({ kind: 'full', items: [] });
        // These have no null in the protocol.
        else if (/[cC]olor/.test(name)) expect(answer, name).toEqual([]);
        else expect(answer, name).toBeNull();
    }
    // Nor is one read that lies there and is no recipe.
    writeFileSync(path.join(folder, 'notes.txt'), 'recipe');
    const other = { ...params, textDocument: { uri: uriOf('notes.txt') } };
    for (const name of ['rename', 'references', 'documentHighlight', 'hover'])
        expect(await server.connection.sendRequest(`textDocument/${name}`, other), name).toBeNull();
});

it('a client that refuses all that it is asked keeps its server', async () => {
    server = new WireServer();
    const refused = new Set<string>();
    const wanted = [
        'client/registerCapability',
        'workspace/inlayHint/refresh',
        'workspace/codeLens/refresh',
        'workspace/diagnostic/refresh',
        'window/workDoneProgress/create',
    ];
    for (const name of [...wanted, 'workspace/configuration'])
        server.connection.onRequest(name, () => {
            refused.add(name);
            return new ResponseError(LSPErrorCodes.RequestFailed, 'Not here.');
        });
    await server.initialize(folderUri, {
        window: { workDoneProgress: true },
        textDocument: { diagnostic: {}, semanticTokens: { requests: {}, tokenTypes: [], tokenModifiers: [], formats: [] } },
        workspace: {
            ...{ workspaceFolders: true, configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
            ...{ didChangeWatchedFiles: { dynamicRegistration: true }, diagnostics: { refreshSupport: true } },
            ...{ inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
        },
    });
    const textDocument = { uri: uriOf('r0.kerf'), languageId: 'kerf', version: 1, text: recipe('r-0') };
    void server.connection.sendNotification('textDocument/didOpen', { textDocument });
    await expect.poll(() => wanted.filter((name) => !refused.has(name)), { timeout: 25_000 }).toEqual([]);
    expect(await codeOf(server.connection.sendRequest('textDocument/hover', hover('r0.kerf')))).toBe('answered');
    expect(server.process.exitCode).toBeNull();
    expect(server.complaints).toBe('');
});

it('a client that knows of no folders is served in silence', async () => {
    server = new WireServer();
    await server.initialize(undefined, {});
    const textDocument = { uri: uriOf('r0.kerf'), languageId: 'kerf', version: 1, text: recipe('r-0') };
    void server.connection.sendNotification('textDocument/didOpen', { textDocument });
    expect(await server.connection.sendRequest('textDocument/hover', hover('r0.kerf'))).not.toBeNull();
    await server.connection.sendRequest('shutdown');
    await server.connection.sendNotification('exit');
    expect(await server.ended).toBe(0);
    expect(server.complaints).toBe('');
});

/** The requests that a server says it answers. */
function requestsOf(capabilities: InitializeResult['capabilities']): string[] {
    const names: Readonly<Record<string, readonly string[]>> = {
        codeActionProvider: ['textDocument/codeAction'],
        codeLensProvider: ['textDocument/codeLens'],
        colorProvider: ['textDocument/documentColor', 'textDocument/colorPresentation'],
        completionProvider: ['textDocument/completion', 'completionItem/resolve'],
        definitionProvider: ['textDocument/definition'],
        diagnosticProvider: ['textDocument/diagnostic', 'workspace/diagnostic'],
        documentFormattingProvider: ['textDocument/formatting'],
        documentHighlightProvider: ['textDocument/documentHighlight'],
        documentLinkProvider: ['textDocument/documentLink'],
        documentOnTypeFormattingProvider: ['textDocument/onTypeFormatting'],
        documentRangeFormattingProvider: ['textDocument/rangeFormatting', 'textDocument/rangesFormatting'],
        documentSymbolProvider: ['textDocument/documentSymbol'],
        executeCommandProvider: ['workspace/executeCommand'],
        foldingRangeProvider: ['textDocument/foldingRange'],
        hoverProvider: ['textDocument/hover'],
        inlayHintProvider: ['textDocument/inlayHint'],
        linkedEditingRangeProvider: ['textDocument/linkedEditingRange'],
        referencesProvider: ['textDocument/references'],
        renameProvider: ['textDocument/rename', 'textDocument/prepareRename'],
        selectionRangeProvider: ['textDocument/selectionRange'],
        semanticTokensProvider: ['textDocument/semanticTokens/full', 'textDocument/semanticTokens/range'],
        signatureHelpProvider: ['textDocument/signatureHelp'],
        textDocumentSync: [],
        typeHierarchyProvider: ['textDocument/prepareTypeHierarchy', 'typeHierarchy/supertypes', 'typeHierarchy/subtypes'],
        workspace: ['workspace/willRenameFiles', 'workspace/willDeleteFiles', 'workspace/textDocumentContent'],
        workspaceSymbolProvider: ['workspace/symbol'],
    };
    return Object.entries(capabilities).flatMap(([name, value]) => {
        if (value === undefined || value === false) return [];
        const found = names[name];
        if (found === undefined) throw new Error(`Nobody has said what is asked of ${name}.`);
        return found;
    });
}
