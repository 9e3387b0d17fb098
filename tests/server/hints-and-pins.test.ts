import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CodeAction, Hover, InitializeResult, InlayHint, MarkupContent } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { LanguageClient } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
/** The recipe that is looked at, one that lies beside it, and what both use: each server plans all that lies in its folder. */
const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-hints-')));
for (const name of ['heron-tray.kerf', 'tide-coaster.kerf', 'workshop.kerf', 'art/heron.svg', 'art/tide-rings.svg'])
    cpSync(path.join(samples, name), path.join(folder, name));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();
const uri = uriOf('heron-tray.kerf');
const recipes = ['heron-tray.kerf', 'tide-coaster.kerf'].map(uriOf);
const tray = readFileSync(path.join(samples, 'heron-tray.kerf'), 'utf8');

let client: LanguageClient;
let answer: InitializeResult;
let version = 1;
beforeEach(async () => {
    version = 1;
    ({ client, answer } = await LanguageClient.start(folder, pathToFileURL(folder).toString()));
});
afterEach(() => client.stop());

/** Waits until the hints of a text please, since plans come in their own time. */
async function hintsWhen(text: string, please: (all: string[]) => boolean): Promise<string[]> {
    for (const end = Date.now() + 15_000; ; ) {
        const all = await hints(text);
        if (please(all)) return all;
        if (Date.now() > end) throw new Error(`The hints are:\n${all.join('\n')}`);
        await new Promise((resolve) => setTimeout(resolve, 20));
    }
}

const opened = async (text: string): Promise<string[]> => {
    await client.open(uri, text);
    return hintsWhen(text, (all) => all.length === 10);
};

/** How often hints were refreshed, once nothing more is planned: the other files of the folder are planned too. */
async function quiet(): Promise<number> {
    for (let count = -1; count !== client.refreshes; ) {
        count = client.refreshes;
        // Answered when their plans are there, however long that takes on a busy machine.
        await Promise.all(recipes.map((each) => client.connection.sendRequest('kerfbook/checklist', { uri: each })));
        await new Promise((resolve) => setTimeout(resolve, 700));
    }
    return client.refreshes;
}

const change = (text: string): Promise<void> => client.change(uri, ++version, text);

/** Each hint with the line it stands in, its place marked. */
async function hints(text: string): Promise<string[]> {
    const range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
    // Asked before the text is there or between two builds, the server wants to be asked again.
    const answered = await client.connection
        .sendRequest<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range })
        .catch(() => undefined);
    const all = Array.isArray(answered) ? answered : [];
    const lines = text.split('\n');
    return all.map(({ position, label }) => {
        const line = lines[position.line]!;
        return `${line.slice(0, position.character)} ‹${String(label)}›${line.slice(position.character)}`.trim();
    });
}

async function pinAction(text: string, title: string): Promise<CodeAction | undefined> {
    const position = TextDocument.create(uri, 'kerfbook', 1, text).positionAt(text.indexOf('engrave pocket'));
    const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri },
        range: { start: position, end: position },
        context: { diagnostics: [], only: ['refactor.rewrite'] },
    });
    return actions.find((action) => action.title.startsWith(title));
}

function taken(text: string, action: CodeAction | undefined): string {
    return TextDocument.applyEdits(TextDocument.create(uri, 'kerfbook', 1, text), action?.edit?.changes?.[uri] ?? []);
}

describe('solved figures beside the text', () => {
    it('are promised to the editor, and so is pinning', () => {
        expect(answer.capabilities.inlayHintProvider).toBeTruthy();
        expect(answer.capabilities.codeActionProvider).toMatchObject({
            codeActionKinds: expect.arrayContaining(['refactor.rewrite']),
        });
    });
    it('stand at the depth, the step’s head and the inlay, and only where nothing is written', async () => {
        expect(await opened(tray)).toEqual([
            expect.stringMatching(/^engrave pocket on tray ‹\d+ min› \{$/),
            expect.stringMatching(/^depth 0\.54 mm ‹± 0\.\d+ mm›$/),
            expect.stringMatching(/^depth 0\.54 mm ‹80 % at \d+ mm\/s, pitch 0\.1 mm›$/),
            expect.stringMatching(/^engrave relief on bird ‹\d+ min› \{$/),
            expect.stringMatching(/^depth through ‹97\.5 % sure, 0\.\d+ mm to spare›$/),
            expect.stringMatching(/^depth through ‹80 % at \d+ mm\/s, pitch 0\.1 mm›$/),
            expect.stringMatching(/^inlay relief into pocket ‹proud 0\.\d+ mm ± 0\.\d+ mm, left 0\.\d+ mm ± 0\.\d+ mm› \{$/),
            expect.stringMatching(/^make 4 ‹ready after \d+ d( \d+ h)?, \d+\.\d\d EUR each›$/),
            'engrave pocket on tray { ‹without air, scan across grain›',
            'engrave relief on bird { ‹without air, scan across grain›',
        ]);
    });
    it('what holds without being written is not shown to whoever does not want to see it', async () => {
        const all = await opened(tray);
        const told = (defaults: boolean) =>
            client.connection.sendNotification('workspace/didChangeConfiguration', {
                settings: { kerfbook: { hints: { defaults } } },
            });
        await told(false);
        expect(await hintsWhen(tray, ({ length }) => length === 8)).toEqual(all.slice(0, 8));
        await told(true);
        await hintsWhen(tray, ({ length }) => length === 10);
    });
    it('tell on `make` what the run takes, needs and costs', async () => {
        await opened(tray);
        const position = TextDocument.create(uri, 'kerfbook', 1, tray).positionAt(tray.indexOf('make 4') + 1);
        const hover = await client.connection.sendRequest<Hover>('textDocument/hover', { textDocument: { uri }, position });
        const said = (hover.contents as MarkupContent).value;
        for (const words of ['4 pieces', '× walnut-12', 'foil tape', 'Work', 'Price of one']) expect(said).toContain(words);
    });
    it('move with the text, and are not asked for anew when nothing is new', async () => {
        const before = await opened(tray);
        const count = await quiet();
        expect(count).toBeGreaterThan(0);
        const moved = `// a line above\n\n${tray}`;
        await change(moved);
        expect(await hintsWhen(moved, (all) => all.join() === before.join())).toEqual(before);
        expect(await quiet()).toBe(count);
        const deeper = moved.replace('depth 0.54 mm', 'depth 0.50 mm');
        await change(deeper);
        await hintsWhen(deeper, (all) => all[1]?.startsWith('depth 0.50 mm') === true);
        expect(await quiet()).toBeGreaterThan(count);
    });
    it('follow a coupon in another file', async () => {
        const stockUri = uriOf('workshop.kerf');
        const stock = readFileSync(path.join(samples, 'workshop.kerf'), 'utf8');
        const before = await opened(tray);
        await client.open(stockUri, stock.replace('80 % at 250 mm/s gives 0.41 mm', '80 % at 250 mm/s gives 0.38 mm'));
        await hintsWhen(tray, (all) => all.length === 10 && all.join() !== before.join());
    });
});

describe('pin and unpin', () => {
    it('write the settings down as they were solved, and take them out again', async () => {
        await opened(tray);
        const pinned = taken(tray, await pinAction(tray, 'Pin the settings'));
        expect(pinned).toMatch(/depth 0\.54 mm\n {4}power 80 %\n {4}speed \d+ mm\/s\n {4}pitch 0\.1 mm\n {4}passes 3\n/);
        await change(pinned);
        // One hint less: nothing is left to be said of the settings.
        const after = await hintsWhen(pinned, (all) => all.length === 9);
        expect(after[1]).toMatch(/^depth 0\.54 mm ‹± 0\.\d+ mm›$/);
        expect(await pinAction(pinned, 'Pin')).toBeUndefined();
        const unpinned = taken(pinned, await pinAction(pinned, 'Unpin the settings'));
        expect(unpinned).toBe(tray.replace('    passes 3\n', ''));
        await change(unpinned);
        // Solved without the three passes that were written, by the same law.
        await hintsWhen(unpinned, (all) => /80 % at \d+ mm\/s, pitch 0\.1 mm, 3 passes/.test(all[2] ?? ''));
    });
    it('a pinned step whose depth was changed is solved again by its fix', async () => {
        await opened(tray);
        const pinned = taken(tray, await pinAction(tray, 'Pin the settings'));
        const deepened = pinned.replace('depth 0.54 mm', 'depth 0.60 mm');
        const fix = await solvingAnew(deepened);
        expect(fix).toMatchObject({ title: 'Solve again', kind: 'quickfix', isPreferred: true });
        const mended = taken(deepened, fix);
        expect(mended).not.toMatch(/depth 0\.60 mm\n {4}power/);
        await change(mended);
        await client.diagnostics(uri, (all) => !all.some(({ code }) => code === 'settings-miss-depth'));
        // So deep the veneer would lie below the face: it is solved for a depth that takes it.
        const tooDeep = pinned.replace('depth 0.54 mm', 'depth 0.70 mm');
        const other = await solvingAnew(tooDeep);
        expect(other).toMatchObject({ title: 'Ask for 0.54 mm and solve again', isPreferred: true });
        expect(taken(tooDeep, other)).toBe(mended.replace('depth 0.60 mm', 'depth 0.54 mm'));
    });
});

/** The fix of the finding that pinned settings miss their depth which takes them out. */
async function solvingAnew(text: string): Promise<CodeAction | undefined> {
    await change(text);
    const found = await client.diagnostics(uri, (all) => all.some(({ code }) => code === 'settings-miss-depth'));
    const stale = found.find(({ code }) => code === 'settings-miss-depth')!;
    const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri },
        range: stale.range,
        context: { diagnostics: [stale] },
    });
    return actions.find(({ title }) => /solve again$/i.test(title));
}
