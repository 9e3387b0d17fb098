import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CancellationTokenSource, type FileChangeType, LSPErrorCodes } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { requests } from '../../shared/view/requests';
import { WireServer } from '../kit/wire-server';
import { type Edit, edits, spanOf } from './texts';

/** Edits and requests; `npm run fuzz` sends all of them in one go. */
const count = Number(process.env.WIRE_MESSAGES ?? 20_000);
/** A request that has no answer after so long has been forgotten, ms. */
const deadline = 60_000;
const seed = Number(process.env.WIRE_SEED ?? 20_261_130);

const texts: Readonly<Record<string, string>> = {
    'workshop.kerf':
        'laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }\nboard oak { wood white-oak  thickness 12 mm  moisture 8 % }\n',
    'tray.kerf':
        'use "workshop.kerf"\n\nrecipe tray "Tray" {\n  revision 1\n  laser shed\n  blank lid { of oak  size 100 x 80 mm  grain along width }\n  engrave eye on lid {\n    circle 20 mm at 50, 40 mm\n    depth 0.3 mm\n    scan across grain\n    air off\n  }\n  sand lid { take 0.1 mm  grits 120, 180 }\n}\n',
    // Not on disk: closed, it is gone.
    'unsaved.kerf':
        'use "tray.kerf"\nuse "workshop.kerf"\n\nrecipe wide from tray {\n  blank lid { of oak  size 120 x 80 mm }\n}\n',
};
const names = Object.keys(texts);
const onDisk = names.slice(0, 2);

const atPlace = [
    'hover',
    'completion',
    'definition',
    'references',
    'documentHighlight',
    'linkedEditingRange',
    'rename',
    'prepareRename',
];
const ofFile = [
    ...['documentSymbol', 'foldingRange', 'documentLink', 'codeLens', 'documentColor', 'formatting', 'semanticTokens/full'],
    ...['semanticTokens/range', 'inlayHint', 'codeAction', 'selectionRange', 'diagnostic'],
];
const standard = [...atPlace, ...ofFile].map((name) => `textDocument/${name}`);
const own = [
    requests.checklist.method,
    requests.table.method,
    requests.couponChoices.method,
    requests.squares.method,
    requests.bench.method,
];

const share = fc.double({ min: 0, max: 1, noNaN: true });
const file = fc.nat(names.length - 1);
const act = fc.oneof(
    { weight: 40, arbitrary: fc.record({ do: fc.constant('type' as const), file, edit: edits }) },
    {
        weight: 50,
        arbitrary: fc.record({
            do: fc.constant('ask' as const),
            file,
            method: fc.oneof(
                { weight: 20, arbitrary: fc.constantFrom(...standard) },
                { weight: 2, arbitrary: fc.constantFrom(...own) },
                { weight: 2, arbitrary: fc.constantFrom('workspace/symbol', 'workspace/diagnostic') },
            ),
            at: share,
            cancel: fc.oneof({ weight: 9, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }),
        }),
    },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('close' as const), file, open: fc.boolean() }) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('watched' as const), file, type: fc.constantFrom(1, 2, 3) }) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('anew' as const), file }) },
    // Mostly short; now and then long enough for all that was asked.
    {
        weight: 3,
        arbitrary: fc.record({
            do: fc.constant('rest' as const),
            ms: fc.oneof({ weight: 4, arbitrary: fc.nat(8) }, { weight: 1, arbitrary: fc.nat(40) }),
        }),
    },
    { weight: 6, arbitrary: fc.record({ do: fc.constant('turn' as const) }) },
);
type Act = typeof act extends fc.Arbitrary<infer One> ? One : never;

const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-wire-'));
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();

let server: WireServer;
beforeAll(async () => {
    for (const name of onDisk) writeFileSync(path.join(folder, name), texts[name]!);
    server = new WireServer();
    await server.initialize(pathToFileURL(folder).toString(), { textDocument: { diagnostic: {} } });
});
afterAll(() => {
    server.stop();
    rmSync(folder, { recursive: true, force: true });
});

/** A refusal to rename is an answer. */
const refusing = new Set(['textDocument/rename', 'textDocument/prepareRename']);

/** The texts as an editor has them, and what came of its questions. */
class Editor {
    readonly failures: string[] = [];
    readonly outcomes = new Map<string, number>();
    open = 0;
    private readonly documents = new Map<string, TextDocument>();
    private readonly lastTexts = new Map(Object.entries(texts));
    private version = 0;

    async do(each: Act): Promise<void> {
        if (each.do === 'rest') return new Promise((resolve) => setTimeout(resolve, each.ms));
        if (each.do === 'turn') return new Promise((resolve) => setImmediate(resolve));
        const name = names[each.file]!;
        if (each.do === 'close') {
            if (this.documents.has(name)) this.close(name);
            if (each.open) this.show(name, this.lastTexts.get(name)!);
        } else if (each.do === 'anew') this.show(name, texts[name]!);
        else if (each.do === 'watched')
            this.tell('workspace/didChangeWatchedFiles', { changes: [{ uri: uriOf(name), type: each.type as FileChangeType }] });
        else if (each.do === 'type') this.type(name, each.edit);
        else this.ask(name, each);
    }

    private tell(what: string, params: object): void {
        void server.connection.sendNotification(what, params);
    }

    show(name: string, text: string): void {
        if (this.documents.has(name)) this.close(name);
        const document = TextDocument.create(uriOf(name), 'kerf', ++this.version, text);
        this.documents.set(name, document);
        this.tell('textDocument/didOpen', {
            textDocument: { uri: document.uri, languageId: 'kerf', version: this.version, text },
        });
    }

    private close(name: string): void {
        const document = this.documents.get(name)!;
        this.lastTexts.set(name, document.getText());
        this.documents.delete(name);
        this.tell('textDocument/didClose', { textDocument: { uri: document.uri } });
    }

    private type(name: string, edit: Edit): void {
        const document = this.documents.get(name);
        if (document === undefined) {
            this.show(name, this.lastTexts.get(name)!);
            return;
        }
        const { start, end } = spanOf(edit, document.getText());
        const contentChanges = [
            { range: { start: document.positionAt(start), end: document.positionAt(end) }, text: edit.piece },
        ];
        this.tell('textDocument/didChange', { textDocument: { uri: document.uri, version: ++this.version }, contentChanges });
        this.documents.set(name, TextDocument.update(document, contentChanges, this.version));
    }

    private ask(name: string, { method: what, at, cancel }: Extract<Act, { do: 'ask' }>): void {
        const document = this.documents.get(name) ?? TextDocument.create(uriOf(name), 'kerf', 0, this.lastTexts.get(name)!);
        const position = document.positionAt(Math.floor(at * document.getText().length));
        const params = {
            ...{
                textDocument: { uri: document.uri },
                position,
                positions: [position],
                range: { start: position, end: position },
            },
            ...{ options: { tabSize: 2, insertSpaces: true }, newName: 'quite-new' },
            ...{ context: { includeDeclaration: true, diagnostics: [], only: ['source.fixAll'] } },
            ...{ query: 'o', previousResultIds: [], uri: document.uri, sheet: 'oak', laser: 'shed' },
        };
        const source = new CancellationTokenSource();
        this.open++;
        const label = `${what} in ${name}`;
        const timer = setTimeout(() => this.failures.push(`${label} was never answered`), deadline);
        server.connection
            .sendRequest(what, params, source.token)
            .then(
                () => this.count('answered'),
                (error: { code?: number; message?: string }) => {
                    if (error.code === LSPErrorCodes.ContentModified) return this.count('content modified');
                    if (cancel && error.code === LSPErrorCodes.RequestCancelled) return this.count('cancelled');
                    if (refusing.has(what) && error.code === LSPErrorCodes.RequestFailed && !/state/.test(error.message ?? ''))
                        return this.count('refused');
                    this.failures.push(`${label}: ${error.code} ${error.message}`);
                },
            )
            .finally(() => {
                clearTimeout(timer);
                this.open--;
            });
        if (cancel) setImmediate(() => source.cancel());
    }

    private count(outcome: string): void {
        this.outcomes.set(outcome, (this.outcomes.get(outcome) ?? 0) + 1);
    }
}

test(
    `each request among ${count} edits and requests ends with an answer, as out of date, or by its own cancellation`,
    async () => {
        const editor = new Editor();
        for (const name of names) editor.show(name, texts[name]!);
        let sent = 0;
        for (let round = 0; sent < count; round++) {
            const acts = fc.sample(fc.array(act, { minLength: 200, maxLength: 200, size: 'max' }), {
                numRuns: 1,
                seed: seed + round,
            })[0]!;
            for (const each of acts) {
                await editor.do(each);
                if (each.do !== 'rest' && each.do !== 'turn') sent++;
            }
        }
        const until = Date.now() + deadline + 5000;
        while (editor.open > 0 && Date.now() < until) await new Promise((resolve) => setTimeout(resolve, 50));
        expect(editor.failures, `${sent} sent, ${JSON.stringify(Object.fromEntries(editor.outcomes))}`).toEqual([]);
        expect(editor.open).toBe(0);
        // None of them was too quick to be asked in earnest.
        expect(editor.outcomes.get('answered')).toBeGreaterThan(count / 4);
        expect(server.complaints).toBe('');
    },
    deadline * 2 + count * 20,
);
