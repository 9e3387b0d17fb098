import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { beforeAll, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { lowerFile } from '../../language/lowering/lower-file';
import { createKerfServices } from '../../language/module';
import { textFindings } from '../../language/text-findings';
import { type Edit, edits, patience, runs, samples, spanOf } from './texts';

/** One shop in which files are typed in, and one in which they are read anew each time. */
const typed = createKerfServices(EmptyFileSystem);
const fresh = createKerfServices(EmptyFileSystem);
const names = ['workshop.kerf', 'heron-tray.kerf', 'tray-variants.kerf'];
const uris = names.map((name) => URI.parse(`file:///shop/${name}`));
const textOf = (name: string) => samples.find((sample) => sample.name === name)!.text;

type Services = typeof typed;

beforeAll(async () => {
    for (const { shared } of [typed, fresh]) await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    await openAll();
});

async function openAll(): Promise<TextDocument[]> {
    const opened = names.map((name, index) => TextDocument.create(uris[index]!.toString(), 'kerfbook', 1, textOf(name)));
    for (const document of opened) typed.shared.workspace.TextDocuments.set(document);
    await typed.shared.workspace.DocumentBuilder.update(uris, []);
    return opened;
}

async function type(open: TextDocument, edit: Edit): Promise<void> {
    const { start, end } = spanOf(edit, open.getText());
    const range = { start: open.positionAt(start), end: open.positionAt(end) };
    TextDocument.update(open, [{ range, text: edit.piece }], open.version + 1);
    await typed.shared.workspace.DocumentBuilder.update([URI.parse(open.uri)], []);
}

async function readAnew(texts: readonly string[]): Promise<LangiumDocument[]> {
    const { LangiumDocuments, LangiumDocumentFactory, DocumentBuilder } = fresh.shared.workspace;
    for (const uri of uris) if (LangiumDocuments.hasDocument(uri)) LangiumDocuments.deleteDocument(uri);
    const documents = uris.map((uri, index) => LangiumDocumentFactory.fromString(texts[index]!, uri));
    for (const document of documents) LangiumDocuments.addDocument(document);
    await DocumentBuilder.build(documents, { validation: true });
    return documents;
}

/** All that the editor shows of a file by its text alone. */
async function shown({ kerf }: Services, document: LangiumDocument): Promise<unknown> {
    const params = { textDocument: { uri: document.uri.toString() } };
    const { lsp } = kerf;
    return {
        findings: textFindings(document, kerf),
        recipes: lowerFile(document, kerf),
        outline: await lsp.DocumentSymbolProvider!.getSymbols(document, params),
        colours: (await lsp.SemanticTokenProvider!.semanticHighlight(document, params)).data,
        folds: await lsp.FoldingRangeProvider!.getFoldingRanges(document, params),
        links: await lsp.DocumentLinkProvider!.getDocumentLinks(document, params),
        lenses: await lsp.CodeLensProvider!.provideCodeLens(document, params),
    };
}

test(
    'typing comes to the same as reading anew, in the file and in those that use it',
    async () => {
        const sequence = fc.array(fc.tuple(fc.nat(names.length - 1), edits), { minLength: 1, maxLength: 8 });
        await fc.assert(
            fc.asyncProperty(sequence, async (all) => {
                const open = await openAll();
                for (const [file, edit] of all) await type(open[file]!, edit);
                const anew = await readAnew(open.map((document) => document.getText()));
                for (const [index, uri] of uris.entries()) {
                    const kept = typed.shared.workspace.LangiumDocuments.getDocument(uri)!;
                    const seen = await shown(typed, kept);
                    expect(seen, names[index]).toEqual(await shown(fresh, anew[index]!));
                }
            }),
            { numRuns: Math.ceil(runs / 2) },
        );
    },
    patience,
);

test(
    'long typing holds on to nothing',
    async () => {
        setFlagsFromString('--expose_gc');
        const collect = runInNewContext('gc') as () => void;
        const [workshop] = await openAll();
        const held = (): number => {
            collect();
            return process.memoryUsage().heapUsed / 1e6;
        };
        const round = async (count: number): Promise<void> => {
            const at = workshop!.getText().indexOf('power 45') + 'power '.length;
            for (let run = 0; run < count; run++) {
                const range = { start: workshop!.positionAt(at), end: workshop!.positionAt(at + 2) };
                TextDocument.update(workshop!, [{ range, text: String(40 + (run % 9)) }], workshop!.version + 1);
                await typed.shared.workspace.DocumentBuilder.update([uris[0]!], []);
                for (const uri of uris) textFindings(typed.shared.workspace.LangiumDocuments.getDocument(uri)!, typed.kerf);
            }
        };
        await round(100);
        const before = held();
        // At least so many that a tree kept by each edit, about a megabyte, would be seen.
        await round(Math.max(150, runs));
        expect(held() - before).toBeLessThan(8);
    },
    patience,
);
