/**
 * Typing in a recipe: from an edit to the findings of the text, proposals and hover, beside a JSON language service
 * with a schema on text of the same size. Run by tests/speed/run.mjs.
 */
import { EmptyFileSystem, URI } from 'langium';
import json, { type JSONDocument } from 'vscode-json-languageservice';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createKerfServices } from '../../language/module';
import { textFindings } from '../../language/text-findings';
import { allRules } from '../../shared/rules/all-rules';
import { recipeText, schema, shopText, toJson } from './language-texts';
import { report, reportLoad, type Spread, spread } from './measure';

interface Times {
    readonly edit: Spread;
    readonly completion: Spread;
    readonly hover: Spread;
}

const { shared, kerf } = createKerfServices(EmptyFileSystem, { tradePages: allRules.map(({ page }) => page) });
await shared.workspace.WorkspaceManager.initializeWorkspace([]);
const { DocumentBuilder, LangiumDocuments, TextDocuments } = shared.workspace;

reportLoad();
for (const [what, size] of [
    ['300 lines', recipeText(300, 'lines')],
    ['20 kB', recipeText(20_000, 'characters')],
    ['100 kB', recipeText(100_000, 'characters')],
] as const) {
    const text = shopText + size;
    const own = await recipes(text, `file:///shop/${what.replace(' ', '-')}.kerf`);
    const sameSize = toJson(text.length);
    const peer = await jsonService(sameSize);
    console.log(`\n${what}: recipe of ${(text.length / 1000).toFixed(0)} kB, JSON of ${(sameSize.length / 1000).toFixed(0)} kB`);
    for (const part of ['edit', 'completion', 'hover'] as const) {
        const ratio = own[part].processor / peer[part].processor;
        line(`${part} in the recipe`, own[part], `${ratio.toFixed(1)} times the JSON service's`);
        line(`  ${part} in JSON`, peer[part]);
    }
}

function line(what: string, { median, p95, processor }: Spread, ...remarks: string[]): void {
    report(what, median, `p95 ${p95.toFixed(1)} ms, processor ${processor.toFixed(1)} ms`, ...remarks);
}

async function recipes(text: string, uri: string): Promise<Times> {
    const parsed = URI.parse(uri);
    const open = TextDocument.create(uri, 'kerfbook', 0, text);
    TextDocuments.set(open);
    const document = shared.workspace.LangiumDocumentFactory.fromTextDocument(open, parsed);
    LangiumDocuments.addDocument(document);
    await DocumentBuilder.build([document], { validation: false });
    // The last recipe's depth: whatever reads from the top has the whole way to go.
    const depth = text.lastIndexOf('depth 0.5') + 'depth '.length;
    const params = (offset: number) => ({ textDocument: { uri }, position: open.positionAt(offset) });
    const edit = await spread(async (run) => {
        const range = { start: open.positionAt(depth), end: open.positionAt(depth + 3) };
        TextDocument.update(open, [{ range, text: `0.${5 + (run & 1)}` }], open.version + 1);
        await DocumentBuilder.update([parsed], []);
        textFindings(LangiumDocuments.getDocument(parsed)!, kerf);
    });
    const line = text.lastIndexOf('\n', depth) + 1;
    const completion = await spread(() => kerf.lsp.CompletionProvider!.getCompletion(document, params(line)));
    const hover = await spread(() => kerf.lsp.HoverProvider!.getHoverContent(document, params(depth)));
    return { edit, completion, hover };
}

async function jsonService(text: string): Promise<Times> {
    const service = json.getLanguageService({});
    service.configure({ schemas: [{ uri: 'shop://schema', fileMatch: ['*.json'], schema }] });
    let open = json.TextDocument.create('file:///shop/a.json', 'json', 0, text);
    let document: JSONDocument = service.parseJSONDocument(open);
    const depth = text.lastIndexOf('"depth":') + '"depth":'.length;
    const edit = await spread(async (run) => {
        const range = { start: open.positionAt(depth + 1), end: open.positionAt(depth + 4) };
        open = json.TextDocument.update(open, [{ range, text: `0.${5 + (run & 1)}` }], open.version + 1);
        document = service.parseJSONDocument(open);
        await service.doValidation(open, document);
    });
    const completion = await spread(() => service.doComplete(open, open.positionAt(depth - 8), document));
    const hover = await spread(() => service.doHover(open, open.positionAt(depth - 4), document));
    return { edit, completion, hover };
}
