/**
 * What text costs beyond typing: time on broken text beside the same text whole, and memory by its length, beside a
 * JSON language service with a schema. Run by tests/speed/run.mjs.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import json from 'vscode-json-languageservice';
import { createKerfServices } from '../../language/module';
import { textFindings } from '../../language/text-findings';
import { allRules } from '../../shared/rules/all-rules';
import { recipeText, schema, shopText, toJson } from './language-texts';
import { report } from './measure';

setFlagsFromString('--expose_gc');
const collect = runInNewContext('gc') as () => void;

const { shared, kerf } = createKerfServices(EmptyFileSystem, { tradePages: allRules.map(({ page }) => page) });
await shared.workspace.WorkspaceManager.initializeWorkspace([]);
const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = shared.workspace;

const whole = shopText + recipeText(20_000, 'characters');
const lines = whole.split('\n');

/** The same text with every `nth` line that `breaks` broken by it. */
function broken(nth: number, breaks: RegExp, how: (line: string) => string): string {
    let count = 0;
    return lines.map((line) => (breaks.test(line) && ++count % nth === 0 ? how(line) : line)).join('\n');
}

const texts: readonly (readonly [string, string])[] = [
    ['whole', whole],
    ['every tenth line begins with a word nobody knows', broken(10, /^ {4}\w/, (line) => `    xy${line.trim()}`)],
    ['every tenth line is cut in half', broken(10, /^ {4}\w/, (line) => line.slice(0, 4 + (line.length - 4) / 2))],
    ['every third line is broken', broken(3, /^ +\w/, (line) => `${line} 7 ,`)],
    ['every third closing brace is missing', broken(3, /^ +\}/, () => '')],
    ['every name leads nowhere', whole.replaceAll('laser shed', 'laser shd').replaceAll(/\btray\b(?= \{)/g, 'trai')],
];

console.log(`\nReading ${(whole.length / 1000).toFixed(0)} kB from scratch`);
const times = texts.map(() => [] as number[]);
// In turns, so that whatever else the machine does meets all of them.
for (let run = -5; run < 30; run++) {
    for (const [index, [, text]] of texts.entries()) {
        const start = process.cpuUsage();
        await read(text, URI.parse('file:///shop/broken.kerf'));
        const { user, system } = process.cpuUsage(start);
        if (run >= 0) times[index]!.push((user + system) / 1000);
    }
}
const medians = times.map((each) => each.sort((a, b) => a - b)[Math.floor(each.length / 2)]!);
for (const [index, [what]] of texts.entries())
    report(what, medians[index]!, `${(medians[index]! / medians[0]!).toFixed(2)} times`);

async function read(text: string, uri: URI): Promise<LangiumDocument> {
    if (LangiumDocuments.hasDocument(uri)) LangiumDocuments.deleteDocument(uri);
    const document = LangiumDocumentFactory.fromString(text, uri);
    LangiumDocuments.addDocument(document);
    await DocumentBuilder.build([document], { validation: true });
    textFindings(document, kerf);
    return document;
}

console.log('\nMemory held for 1 MB of text, bytes for each of its own');
const pieces = 200;
await heldBy('recipes', async () => {
    let bytes = 0;
    for (let index = 0; index < pieces; index++) {
        const text = shopText + recipeText(5_000, 'characters');
        await read(text, URI.parse(`file:///shop/held-${index}.kerf`));
        bytes += text.length;
    }
    return { bytes, kept: LangiumDocuments };
});
await heldBy('  JSON', async () => {
    const service = json.getLanguageService({});
    service.configure({ schemas: [{ uri: 'shop://schema', fileMatch: ['*.json'], schema }] });
    let bytes = 0;
    const kept: unknown[] = [];
    for (let index = 0; index < pieces; index++) {
        const text = toJson(5_000);
        const document = json.TextDocument.create(`file:///shop/${index}.json`, 'json', 0, text);
        const parsed = service.parseJSONDocument(document);
        kept.push([document, parsed, await service.doValidation(document, parsed)]);
        bytes += text.length;
    }
    return { bytes, kept };
});

async function heldBy(what: string, make: () => Promise<{ bytes: number; kept: unknown }>): Promise<void> {
    collect();
    const before = process.memoryUsage().heapUsed;
    const { bytes, kept } = await make();
    collect();
    const held = process.memoryUsage().heapUsed - before;
    if (kept !== undefined) console.log(`${what.padEnd(46)} ${(held / bytes).toFixed(0).padStart(9)}`);
}
