import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { EmptyFileSystem, URI } from 'langium';
import { afterAll, beforeAll, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { textPages } from '../../language/findings/pages';
import { createKerfServices } from '../../language/module';
import { textFindings } from '../../language/text-findings';
import { allowablePages } from '../../server/all-pages';
import { LanguageClient } from '../kit/language-client';
import { type Edit, edits, patience, runs, spanOf } from './texts';

const texts: Readonly<Record<string, string>> = {
    'workshop.kerf':
        'laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }\nboard oak { wood white-oak  thickness 12 mm  moisture 8 % }\n',
    'tray.kerf':
        'use "workshop.kerf"\n\nrecipe tray "Tray" {\n  revision 1\n  laser shed\n  blank lid { of oak  size 100 x 80 mm  grain along width }\n  engrave eye on lid {\n    circle 20 mm at 50, 40 mm\n    depth 0.3 mm\n    scan across grain\n    air off\n  }\n  sand lid { take 0.1 mm  grits 120, 180 }\n}\n',
};
const names = Object.keys(texts);
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-fuzz-'));
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();

let client: LanguageClient;
beforeAll(async () => {
    for (const name of names) writeFileSync(path.join(folder, name), texts[name]!);
    ({ client } = await LanguageClient.start(folder, pathToFileURL(folder).toString()));
});
afterAll(() => {
    client.stop();
    rmSync(folder, { recursive: true, force: true });
});

const methods = [
    ...['hover', 'completion', 'definition', 'references', 'documentHighlight', 'linkedEditingRange', 'rename', 'prepareRename'],
    ...['documentSymbol', 'foldingRange', 'documentLink', 'codeLens', 'documentColor', 'formatting', 'semanticTokens/full'],
] as const;
type Method = (typeof methods)[number];

const share = fc.double({ min: 0, max: 1, noNaN: true });
const act = fc.oneof(
    { weight: 4, arbitrary: fc.record({ do: fc.constant('type' as const), file: fc.nat(1), edit: edits }) },
    {
        weight: 4,
        arbitrary: fc.record({
            do: fc.constant('ask' as const),
            file: fc.nat(1),
            method: fc.constantFrom(...methods),
            at: share,
        }),
    },
    { weight: 1, arbitrary: fc.record({ do: fc.constant('reopen' as const), file: fc.nat(1) }) },
    { weight: 1, arbitrary: fc.record({ do: fc.constant('rest' as const), ms: fc.nat(40) }) },
);

/** Refused, taken back, or out of date: answers all the same. */
const expected = new Set([-32800, -32801, -32802, -32803]);

function ask(method: Method, uri: string, document: TextDocument, at: number): Promise<unknown> {
    const position = document.positionAt(Math.floor(at * document.getText().length));
    const options = { tabSize: 2, insertSpaces: true };
    const params = { textDocument: { uri }, position, options, newName: 'quite-new', context: { includeDeclaration: true } };
    return client.connection.sendRequest(`textDocument/${method}`, params).catch((error: { code?: number }) => {
        if (!expected.has(error.code ?? 0)) throw error;
    });
}

function change(document: TextDocument, { start, end, piece }: { start: number; end: number; piece: string }): TextDocument {
    const changes = [{ range: { start: document.positionAt(start), end: document.positionAt(end) }, text: piece }];
    const version = document.version + 1;
    void client.connection.sendNotification('textDocument/didChange', {
        textDocument: { uri: document.uri, version },
        contentChanges: changes,
    });
    return TextDocument.update(document, changes, version);
}

function type(document: TextDocument, edit: Edit): TextDocument {
    return change(document, { ...spanOf(edit, document.getText()), piece: edit.piece });
}

const rules = new Set(textPages.map(({ id }) => id));

/** What is to be said of the texts as they are at the end, read by a language that has seen nothing else. */
async function expectedOf(contents: readonly string[]): Promise<string[][]> {
    const { shared, kerf } = createKerfServices(EmptyFileSystem, { tradePages: allowablePages });
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const documents = names.map((name, index) =>
        shared.workspace.LangiumDocumentFactory.fromString(contents[index]!, URI.parse(uriOf(name))),
    );
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });
    return documents.map((document) =>
        textFindings(document, kerf)
            .filter(({ where }) => where.uri === document.uri.toString())
            .map(({ rule, message }) => `${rule}: ${message}`),
    );
}

test(
    'typed, asked and opened in any order, without waiting, the server answers all and ends where the text is',
    async () => {
        let version = 1;
        await fc.assert(
            fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 25 }), async (acts) => {
                const open = (name: string, text: string): TextDocument => {
                    const document = TextDocument.create(uriOf(name), 'kerfbook', ++version, text);
                    void client.connection.sendNotification('textDocument/didOpen', {
                        textDocument: { uri: document.uri, languageId: 'kerfbook', version, text },
                    });
                    return document;
                };
                const close = (uri: string) =>
                    void client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
                const documents = names.map((name) => open(name, texts[name]!));
                const answers: Promise<unknown>[] = [];
                for (const each of acts) {
                    if (each.do === 'rest') await new Promise((resolve) => setTimeout(resolve, each.ms));
                    else if (each.do === 'type') documents[each.file] = type(documents[each.file]!, each.edit);
                    else if (each.do === 'ask')
                        answers.push(ask(each.method, documents[each.file]!.uri, documents[each.file]!, each.at));
                    else {
                        close(documents[each.file]!.uri);
                        documents[each.file] = open(names[each.file]!, documents[each.file]!.getText());
                    }
                }
                await Promise.all(answers);
                const wanted = await expectedOf(documents.map((document) => document.getText()));
                for (const [index, document] of documents.entries()) {
                    await client.diagnostics(document.uri, (all) => {
                        const said = all
                            .filter(({ code }) => rules.has(String(code)))
                            .map(({ code, message }) => `${code}: ${message}`);
                        return JSON.stringify(said.sort()) === JSON.stringify([...wanted[index]!].sort());
                    });
                }
                version += acts.length;
                for (const { uri } of documents) close(uri);
            }),
            { numRuns: Math.ceil(runs / 4) },
        );
    },
    patience,
);
