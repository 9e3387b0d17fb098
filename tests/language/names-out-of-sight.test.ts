import { afterEach, beforeAll, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';

let kit: MemoryWorkshop;
beforeAll(async () => {
    kit = await memoryWorkshop({});
});
afterEach(() => kit.forget());

/** The text after a proposal at `<|>` has been taken, its other edits included. */
async function taken(label: string, marked: string): Promise<string | undefined> {
    const offset = marked.indexOf('<|>');
    const document = await kit.open(marked.replace('<|>', ''), 'plate.kerf');
    const list = await kit.workshop.services.lsp.CompletionProvider!.getCompletion(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset),
    });
    const item = list?.items.find((each) => each.label === label);
    if (item?.textEdit === undefined || !('range' in item.textEdit)) return undefined;
    return TextDocument.applyEdits(document.textDocument, [item.textEdit, ...(item.additionalTextEdits ?? [])]);
}

const annex = 'board plum-8 { wood black-walnut  thickness 8 mm }\n';
const plate = 'recipe plate {\n  blank tray { of <|> }\n}\n';

it('a name of a file that is not used brings its `use` along, at the top', async () => {
    await kit.open(annex, 'annex.kerf');
    expect(await taken('plum-8', plate)).toBe(`use "annex.kerf"\n\n${plate.replace('<|>', 'plum-8')}`);
});

it('behind those that are there', async () => {
    await kit.open(annex, 'annex.kerf');
    await kit.open('laser shed { beam co2  power 40 W }\n', 'tools.kerf');
    const text = `// A plate.\nuse "tools.kerf"\n\n${plate}`;
    expect(await taken('plum-8', text)).toBe(
        `// A plate.\nuse "tools.kerf"\nuse "annex.kerf"\n\n${plate.replace('<|>', 'plum-8')}`,
    );
});

it('not where the file is used already, through another too', async () => {
    await kit.open(annex, 'annex.kerf');
    await kit.open('use "annex.kerf"\n', 'tools.kerf');
    const text = `use "tools.kerf"\n\n${plate}`;
    expect(await taken('plum-8', text)).toBe(text.replace('<|>', 'plum-8'));
});

it('and only what fits there', async () => {
    await kit.open('laser attic { beam co2  power 40 W }\n', 'tools.kerf');
    expect(await taken('attic', plate)).toBeUndefined();
});

it('a name that two files have is proposed once, from the nearer one', async () => {
    await kit.open(annex, 'far/away/annex.kerf');
    await kit.open(annex, 'far/annex.kerf');
    expect(await taken('plum-8', plate)).toContain('use "far/annex.kerf"\n');
});
