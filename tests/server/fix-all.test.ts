import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { LanguageClient } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const uriOf = (name: string) => pathToFileURL(path.join(samples, name)).toString();
const textOf = (name: string) => readFileSync(path.join(samples, name), 'utf8');

let client: LanguageClient;
beforeAll(async () => {
    ({ client } = await LanguageClient.start(samples, pathToFileURL(samples).toString()));
});
afterAll(() => client.stop());

/** The text after all was fixed, asked for by somebody who knows of no finding; the same text when there is nothing to fix. */
async function fixedAll(name: string, version: number, text: string): Promise<string> {
    const uri = uriOf(name);
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
