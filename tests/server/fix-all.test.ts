import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { but, inlaid } from '../classics/recipes';
import { drawings } from '../classics/stock';
import { LanguageClient } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const uriOf = (name: string, folder = samples) => pathToFileURL(path.join(folder, name)).toString();
const textOf = (name: string) => readFileSync(path.join(samples, name), 'utf8');

let client: LanguageClient;
beforeAll(async () => {
    ({ client } = await LanguageClient.start(samples, pathToFileURL(samples).toString()));
});
afterAll(() => client.stop());

/** The text after all was fixed, asked for by somebody who knows of no finding; the same text when there is nothing to fix. */
async function fixedAll(name: string, version: number, text: string, folder = samples): Promise<string> {
    const uri = uriOf(name, folder);
    if (version === 1) await client.open(uri, text);
    else await client.change(uri, version, text);
    const start = { line: 0, character: 0 };
    const actions = await client.connection.sendRequest<CodeAction[] | null>('textDocument/codeAction', {
        textDocument: { uri },
        range: { start, end: start },
        context: { diagnostics: [], only: ['source.fixAll'] },
    });
    expect((actions ?? []).map(({ kind }) => kind).every((kind) => kind === 'source.fixAll')).toBe(true);
    const edits = actions?.[0]?.edit?.changes?.[uri] ?? [];
    return TextDocument.applyEdits(TextDocument.create(uri, 'kerfbook', version, text), edits);
}

it('what text and trade find is mended at once, for somebody who has not heard of it', async () => {
    const broken = textOf('heron-tray.kerf')
        .replace(/^ *mirror\r?\n/m, '')
        .replace('of walnut-12', 'of walnutt-12');
    const once = await fixedAll('heron-tray.kerf', 1, broken);
    expect(once).toContain('of walnut-12');
    expect(once).toMatch(/^ *mirror$/m);
}, 120_000);

it.each(readdirSync(samples).filter((name) => name.includes('faulty')))(
    'of %s there is nothing left to do after one round',
    async (name) => {
        const once = await fixedAll(name, 1, textOf(name));
        expect(once).not.toBe(textOf(name));
        expect(await fixedAll(name, 2, once)).toBe(once);
    },
    120_000,
);

/** Two slips each, of which the one is mended by a figure that the other has a say in. */
const slips: readonly (readonly [string, string])[] = [
    ['a depth in the wrong unit and no mirror', but(but(inlaid, 'depth 0.55 mm', 'depth 0.55 in'), '    mirror\n', '')],
    ['too shallow for veneer and sanding', but(but(inlaid, 'depth 0.55 mm', 'depth 0.25 mm'), 'then 0.10 mm', 'then 0.65 mm')],
    ['settings that cannot reach the depth', but(inlaid, 'depth 0.55 mm', 'depth 8 mm\n    speed 500 mm/s\n    passes 1')],
];

it.each(slips)(
    'of a classic slip (%s) there is nothing left to do after one round either',
    async (name, text) => {
        const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-fix-all-'));
        for (const [art, content] of Object.entries(drawings)) writeFileSync(path.join(folder, art), content);
        const file = `${name.replaceAll(' ', '-')}.kerf`;
        const once = await fixedAll(file, 1, text, folder);
        expect(await fixedAll(file, 2, once, folder)).toBe(once);
        rmSync(folder, { recursive: true });
    },
    120_000,
);

it('several lines for a step that has no braces yet stand in one pair of them', async () => {
    const text = `laser shed { beam co2  power 45 W  field 600 x 400 mm  spot 0.12 mm  top speed 500 mm/s }
board oak { wood white-oak  thickness 10 mm  moisture 8 % }
veneer maple { wood sugar-maple  thickness 0.6 mm  moisture 8 % }
recipe r {
  laser shed
  blank b { of oak  size 120 x 80 mm  grain along width }
  blank v { of maple  size 120 x 80 mm }
  engrave p on b { rectangle 30 x 20 mm at 40, 40 mm  depth 0.2 mm }
  engrave q on v { rectangle 30 x 20 mm at 40, 40 mm  mirror  depth 0.55 mm }
  inlay q into p
}
`;
    const once = await fixedAll('no-braces.kerf', 1, text);
    expect(once).toMatch(/^ {2}inlay q into p \{[^{}]*marks 3[^{}]*\}$/m);
    expect(once).toMatch(/^ {2}inlay q into p \{[^{}]*glue wood-glue[^{}]*\}$/m);
    expect(await fixedAll('no-braces.kerf', 2, once)).toBe(once);
}, 120_000);
