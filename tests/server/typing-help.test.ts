import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
    CodeAction,
    ShowMessageParams,
    SignatureHelp,
    SnippetTextEdit,
    TextDocumentEdit,
    TextEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { LanguageClient } from '../kit/language-client';

const workshop = `laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board walnut { wood black-walnut  thickness 12 mm }
`;
const recipe = `use "workshop.kerf"
recipe plate {
  laser shed
  art leaf "art/leaf.svg"
  blank t { of walnut  size 100 x 80 mm }
  engrave e on t {
    art leaf at 50, 40 mm
    depth 0.3 mm
  }
}
`;
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-typing-'));
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();
const said: ShowMessageParams[] = [];

let client: LanguageClient;
beforeAll(async () => {
    writeFileSync(path.join(folder, 'workshop.kerf'), workshop);
    writeFileSync(path.join(folder, 'plate.kerf'), recipe);
    ({ client } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), {
        workspace: { workspaceEdit: { documentChanges: true, snippetEditSupport: true } },
    }));
    client.connection.onNotification('window/showMessage', (params: ShowMessageParams) => void said.push(params));
});
afterAll(() => {
    client.stop();
    rmSync(folder, { recursive: true, force: true });
});

let version = 1;
const scratch = uriOf('scratch.kerf');
beforeAll(() => client.open(scratch, ''));

/** What is shown at `▮`: the label with the active part in brackets. */
async function helpAt(marked: string): Promise<string | undefined> {
    const text = marked.replace('▮', '');
    await client.change(scratch, ++version, text);
    const help = await client.connection.sendRequest<SignatureHelp | null>('textDocument/signatureHelp', {
        textDocument: { uri: scratch },
        position: TextDocument.create(scratch, 'kerfbook', 1, text).positionAt(marked.indexOf('▮')),
    });
    const [signature] = help?.signatures ?? [];
    const active = signature?.parameters?.[help?.activeParameter ?? -1];
    if (signature === undefined || active === undefined) return undefined;
    for (const { documentation, label } of signature.parameters ?? []) {
        expect((documentation as { value: string }).value, String(label)).not.toBe('');
        expect(signature.label).toContain(label);
    }
    return signature.label.replace(String(active.label), `[${active.label}]`);
}

describe('what a line takes', () => {
    const inCoupon = (line: string) => `coupon walnut on shed {\n  pitch 0.1 mm\n  ${line}\n}\n`;
    const inStep = (line: string) => recipe.replace('art leaf at 50, 40 mm', line);
    it.each([
        [inCoupon('burn ▮'), '[burn …] at … x … gives …'],
        [inCoupon('burn 40 % ▮'), '[burn …] at … x … gives …'],
        [inCoupon('burn 40 % at ▮'), 'burn … [at …] x … gives …'],
        [inCoupon('burn 40 % at 400 mm/s x 2 gives ▮'), 'burn … at … x … [gives …]'],
        [inCoupon('burn 40 % x▮ 2 at 400 mm/s'), 'burn … at … [x …] gives …'],
        [inCoupon('cut 95 % at 8 mm/s gives through kerf ▮'), 'cut … at … x … thickness … gives … [kerf …] strip … fits …'],
        [inStep('art leaf at 50, 40 mm repeat ▮'), '[repeat …] x … every …'],
        [inStep('art leaf repeat 3 x 2 every ▮'), 'repeat … x … [every …]'],
        [inStep('circle 20 mm repeat 3 x ▮'), 'repeat … [x …] every …'],
        ['laser a {\n  set 20 % gives ▮\n}', 'set … [gives …]'],
        ['board a {\n  price 48 ▮\n}', '[price …] for …'],
        ['resin a {\n  price 48 for ▮\n}', 'price … [for …]'],
        ['shop a {\n  price 12 for ▮\n}', 'price … [for …] of …'],
        ['recipe r {\n  art a "a.png" {\n    curve 50 % gives ▮\n  }\n}', 'curve … [gives …]'],
    ])('%s', async (text, shown) => {
        expect(await helpAt(text)).toBe(shown);
    });

    it.each([
        inCoupon('▮burn 40 %'),
        inCoupon('pitch ▮'),
        inStep('depth ▮'),
        inStep('art leaf repeat 3 x 2 every 9 x 9 mm at ▮'),
        inStep('allow x because "repeat 3 x ▮"'),
        inStep('// repeat 3 x ▮'),
        'recipe burn ▮',
        '▮',
    ])('nothing is shown in %s', async (text) => {
        expect(await helpAt(text)).toBeUndefined();
    });
});

describe('several places', () => {
    it('are laid out at once, and nothing between them', async () => {
        const text = 'board  a {\n wood   oak\n}\nboard  b {\n wood   oak\n}\nboard  c {\n wood   oak\n}\n';
        await client.change(scratch, ++version, text);
        const line = (at: number) => ({ start: { line: at, character: 0 }, end: { line: at, character: 9 } });
        const edits = await client.connection.sendRequest<TextEdit[]>('textDocument/rangesFormatting', {
            textDocument: { uri: scratch },
            ranges: [line(0), line(6)],
            options: { tabSize: 2, insertSpaces: true },
        });
        const after = TextDocument.applyEdits(TextDocument.create(scratch, 'kerfbook', 1, text), edits);
        expect(after).toBe(text.replace('board  a', 'board a').replace('board  c', 'board c'));
    });
});

describe('a long line', () => {
    it('is broken when the file is laid out', async () => {
        const text = `board a { ${Array.from({ length: 9 }, (_, at) => `lot l${at} { thickness 12 mm }`).join(' ')} }\n`;
        await client.change(scratch, ++version, text);
        const edits = await client.connection.sendRequest<TextEdit[]>('textDocument/formatting', {
            textDocument: { uri: scratch },
            options: { tabSize: 2, insertSpaces: true },
        });
        const after = TextDocument.applyEdits(TextDocument.create(scratch, 'kerfbook', 1, text), edits);
        expect(after.split('\n').slice(0, 3)).toEqual([
            'board a {',
            '  lot l0 { thickness 12 mm }',
            '  lot l1 { thickness 12 mm }',
        ]);
    });
});

describe('what is to be deleted', () => {
    const willDelete = (...names: string[]) =>
        client.connection.sendRequest('workspace/willDeleteFiles', { files: names.map((name) => ({ uri: uriOf(name) })) });

    it('is said to be in use, with the files that use it', async () => {
        said.length = 0;
        expect(await willDelete('art')).toBeNull();
        expect(await willDelete('workshop.kerf')).toBeNull();
        expect(said.map(({ message }) => message)).toEqual([
            'leaf.svg is used by plate.kerf. Without it they cannot be worked out: put it back, or take its lines out.',
            'workshop.kerf is used by plate.kerf. Without it they cannot be worked out: put it back, or take its lines out.',
        ]);
    });

    it('goes in silence where nothing uses it, or what does goes too', async () => {
        said.length = 0;
        await willDelete('art/other.svg');
        await willDelete('plate.kerf', 'workshop.kerf', 'art/leaf.svg');
        expect(said).toEqual([]);
    });
});

describe('allow it, with a reason', () => {
    const drawn = recipe.replace(/ {2}art leaf "[^\n]*\n/, '').replace('art leaf at', 'circle 20 mm at');
    const editsFor = async (text: string) => {
        const uri = uriOf('plate.kerf');
        await client.open(uri, text);
        const found = await client.diagnostics(uri, (all) => all.some(({ code }) => code === 'no-coupon'));
        const diagnostics = found.filter(({ code }) => code === 'no-coupon');
        const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
            textDocument: { uri },
            range: diagnostics[0]!.range,
            context: { diagnostics },
        });
        await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
        return actions.find(({ title }) => title.startsWith('Allow it in this step'))?.edit;
    };

    it('leaves the cursor between the quotes where the editor can', async () => {
        const edit = await editsFor(drawn);
        const [change] = (edit?.documentChanges ?? []) as TextDocumentEdit[];
        expect(change?.textDocument).toEqual({ uri: uriOf('plate.kerf'), version: 1 });
        const [{ snippet }] = change!.edits as [SnippetTextEdit];
        expect(snippet.value).toBe('    allow no-coupon because "$0"\n');
    });

    it('is a plain edit where the editor’s own indentation would come in between', async () => {
        const edit = await editsFor(drawn.replace('    depth 0.3 mm\n  }', '    depth 0.3 mm }'));
        const [{ newText }] = edit?.changes?.[uriOf('plate.kerf')] ?? [];
        expect(newText).toContain('allow no-coupon because ""');
        expect(edit?.documentChanges).toBeUndefined();
    });
});
