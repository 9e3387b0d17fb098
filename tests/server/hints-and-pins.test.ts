import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CodeAction, InitializeResult, InlayHint } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { LanguageClient } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const uri = pathToFileURL(path.join(samples, 'heron-tray.kerf')).toString();
const tray = readFileSync(path.join(samples, 'heron-tray.kerf'), 'utf8');

let client: LanguageClient;
let answer: InitializeResult;
let version = 1;
beforeEach(async () => {
    version = 1;
    ({ client, answer } = await LanguageClient.start(samples, pathToFileURL(samples).toString()));
});
afterEach(() => client.stop());

/** Waits until the server has asked for its hints to be asked for anew. */
async function refreshed(doing: () => Promise<void>): Promise<void> {
    const before = client.refreshes;
    await doing();
    for (const end = Date.now() + 15_000; client.refreshes === before; ) {
        if (Date.now() > end) throw new Error('The hints were never refreshed.');
        await new Promise((resolve) => setTimeout(resolve, 10));
    }
}

const change = (text: string): Promise<void> => client.change(uri, ++version, text);

/** Each hint with the line it stands in, its place marked. */
async function hints(text: string): Promise<string[]> {
    const range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
    const all = await client.connection.sendRequest<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range });
    const lines = text.split('\n');
    return all.map(({ position, label }) => {
        const line = lines[position.line]!;
        return `${line.slice(0, position.character)} ‹${String(label)}›${line.slice(position.character)}`.trim();
    });
}

async function pinAction(text: string, title: string): Promise<CodeAction | undefined> {
    const position = TextDocument.create(uri, 'kerf', 1, text).positionAt(text.indexOf('engrave pocket'));
    const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri },
        range: { start: position, end: position },
        context: { diagnostics: [], only: ['refactor.rewrite'] },
    });
    return actions.find((action) => action.title.startsWith(title));
}

function taken(text: string, action: CodeAction | undefined): string {
    return TextDocument.applyEdits(TextDocument.create(uri, 'kerf', 1, text), action?.edit?.changes?.[uri] ?? []);
}

describe('solved figures beside the text', () => {
    it('are promised to the editor, and so is pinning', () => {
        expect(answer.capabilities.inlayHintProvider).toBeTruthy();
        expect(answer.capabilities.codeActionProvider).toMatchObject({
            codeActionKinds: expect.arrayContaining(['refactor.rewrite']),
        });
    });
    it('stand at the depth, the step’s head and the inlay, and only where nothing is written', async () => {
        await refreshed(() => client.open(uri, tray));
        expect(await hints(tray)).toEqual([
            expect.stringMatching(/^engrave pocket on tray ‹\d+ min› \{$/),
            expect.stringMatching(/^depth 0\.54 mm ‹± 0\.05\d? mm›$/),
            expect.stringMatching(/^depth 0\.54 mm ‹80 % at \d+ mm\/s, pitch 0\.1 mm›$/),
            expect.stringMatching(/^engrave relief on bird ‹\d+ min› \{$/),
            expect.stringMatching(/^depth through ‹80 % at \d+ mm\/s, pitch 0\.1 mm›$/),
            expect.stringMatching(/^inlay relief into pocket ‹proud 0\.\d+ mm ± 0\.\d+ mm, left 0\.\d+ mm ± 0\.\d+ mm› \{$/),
        ]);
    });
    it('move with the text, and are not asked for anew when nothing is new', async () => {
        await refreshed(() => client.open(uri, tray));
        const before = await hints(tray);
        const count = client.refreshes;
        const moved = `// a line above\n\n${tray}`;
        await change(moved);
        await client.connection.sendRequest('textDocument/documentSymbol', { textDocument: { uri } });
        expect(await hints(moved)).toEqual(before);
        await client.connection.sendRequest('kerfbook/checklist', { uri });
        await new Promise((resolve) => setTimeout(resolve, 300));
        expect(client.refreshes).toBe(count);
    });
    it('follow a coupon in another file', async () => {
        const stockUri = pathToFileURL(path.join(samples, 'workshop.kerf')).toString();
        const stock = readFileSync(path.join(samples, 'workshop.kerf'), 'utf8');
        await refreshed(() => client.open(uri, tray));
        const before = await hints(tray);
        await refreshed(() =>
            client.open(stockUri, stock.replace('80 % at 250 mm/s gives 0.41 mm', '80 % at 250 mm/s gives 0.38 mm')),
        );
        expect(await hints(tray)).not.toEqual(before);
    });
});

describe('pin and unpin', () => {
    it('write the settings down as they were solved, and take them out again', async () => {
        await refreshed(() => client.open(uri, tray));
        const solved = (await hints(tray))[2]!;
        const pinned = taken(tray, await pinAction(tray, 'Pin the settings'));
        expect(pinned).toMatch(/depth 0\.54 mm\n {4}power 80 %\n {4}speed \d+ mm\/s\n {4}pitch 0\.1 mm\n {4}passes 3\n/);
        await refreshed(() => change(pinned));
        const after = await hints(pinned);
        expect(after[1]).toMatch(/^depth 0\.54 mm ‹± 0\.05\d? mm›$/);
        expect(after[2]).not.toContain('pitch');
        expect(await pinAction(pinned, 'Pin')).toBeUndefined();
        const unpinned = taken(pinned, await pinAction(pinned, 'Unpin the settings'));
        expect(unpinned).toBe(tray.replace('    passes 3\n', ''));
        await refreshed(() => change(unpinned));
        // Solved without the three passes that were written, by the same law.
        expect((await hints(unpinned))[2]).toMatch(/80 % at \d+ mm\/s, pitch 0\.1 mm, 3 passes/);
        expect(solved).toContain('pitch 0.1 mm');
    });
    it('a pinned step whose depth was changed is solved anew by its fix', async () => {
        await refreshed(() => client.open(uri, tray));
        const pinned = taken(tray, await pinAction(tray, 'Pin the settings')).replace('depth 0.54 mm', 'depth 0.70 mm');
        await change(pinned);
        const [stale] = (await client.diagnostics(uri, (all) => all.some(({ code }) => code === 'settings-miss-depth'))).filter(
            ({ code }) => code === 'settings-miss-depth',
        );
        const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
            textDocument: { uri },
            range: stale!.range,
            context: { diagnostics: [stale] },
        });
        const fix = actions.find(({ title }) => title === 'Solve anew');
        expect(fix).toMatchObject({ kind: 'quickfix', isPreferred: true });
        const mended = taken(pinned, fix);
        expect(mended).not.toMatch(/depth 0\.70 mm\n {4}power/);
        await change(mended);
        await client.diagnostics(uri, (all) => !all.some(({ code }) => code === 'settings-miss-depth'));
    });
});
