import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { CodeAction, CompletionItem, CompletionList, Hover, Location } from 'vscode-languageserver/node';
import type { BuildAnswer, Checklist, PlannedParams } from '../../shared/view/protocol';
import { notifications, requests } from '../../shared/view/requests';
import type { SentPicture } from '../../shared/view/sent-picture';
import { LanguageClient } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const uriOf = (name: string) => pathToFileURL(path.join(samples, name)).toString();
const textOf = (name: string) => readFileSync(path.join(samples, name), 'utf8');

let client: LanguageClient;
beforeAll(async () => {
    ({ client } = await LanguageClient.start(samples, pathToFileURL(samples).toString()));
});
afterAll(() => client.stop());

describe('the language server on the sample workshop', () => {
    it('publishes the same findings of text and trade as squiggles, each with a rule', async () => {
        const uri = uriOf('heron-tray-faulty.kerf');
        await client.open(uri, textOf('heron-tray-faulty.kerf'));
        const all = await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'not-mirrored'));
        const rules = new Set(all.map(({ code }) => code));
        expect(rules.size).toBeGreaterThanOrEqual(10);
        for (const one of all) expect(one.source).toBe('kerfbook');
    });

    it('names in the bench view what is wrong outside of the recipe, and what its finding could be mended with', async () => {
        const uri = uriOf('new-plate.kerf');
        const plate = (name: string) =>
            `recipe ${name} { laser shed  blank b { of walnut-12  size 60 x 40 mm }  engrave e on b { rectangle 20 x 10 mm at 30, 20 mm  depth 0.2 } }\n`;
        await client.open(uri, `use "workshop.kerf"\nuse "lost.kerf"\n${plate('one')}${plate('two')}`);
        const picture = await client.connection.sendRequest<SentPicture>(requests.bench.method, { uri, recipe: 'two' });
        expect(picture.findings.filter(({ severity }) => severity === 'error').map(({ message, fix }) => [message, fix])).toEqual(
            [
                [expect.stringMatching(/lost\.kerf/), undefined],
                [expect.stringMatching(/^`0\.2` needs a unit/), '0.2 mm'],
            ],
        );
    });

    it('the mirror fix mends the mirror finding', async () => {
        const uri = uriOf('heron-tray.kerf');
        const broken = textOf('heron-tray.kerf').replace(/^ *mirror\r?\n/m, '');
        await client.open(uri, broken);
        const [finding] = (await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'not-mirrored'))).filter(
            ({ code }) => code === 'not-mirrored',
        );
        const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
            textDocument: { uri },
            range: finding!.range,
            context: { diagnostics: [finding] },
        });
        const fix = actions.find((action) => action.title === 'Mirror relief');
        const edits = fix?.edit?.changes?.[uri] ?? [];
        expect(edits).toHaveLength(1);
        const lines = broken.split('\n');
        const { start } = edits[0]!.range;
        const offset = lines.slice(0, start.line).reduce((sum, line) => sum + line.length + 1, 0) + start.character;
        await client.change(uri, 2, broken.slice(0, offset) + edits[0]!.newText + broken.slice(offset));
        await client.diagnostics(uri, (found) => !found.some(({ code }) => code === 'not-mirrored'));
    });

    it('while somebody types, the plan is made once there is a rest', async () => {
        const uri = uriOf('seed-box.kerf');
        const text = textOf('seed-box.kerf');
        const planned: number[] = [];
        const listening = client.connection.onNotification(notifications.planned.method, (params: PlannedParams) => {
            // As it lies on disk it may have been planned before it was opened.
            if (params.uri === uri && params.textVersion > 0) planned.push(params.textVersion);
        });
        await client.open(uri, text);
        await vi.waitFor(() => expect(planned).toEqual([1]), 10_000);
        for (let version = 2; version <= 8; version += 1) {
            await client.change(uri, version, `${text}${'\n'.repeat(version)}`);
            await new Promise((resolve) => setTimeout(resolve, 50));
        }
        await vi.waitFor(() => expect(planned.at(-1)).toBe(8), 10_000);
        expect(planned.length).toBeLessThan(5);
        listening.dispose();
    });

    it('goes to the definition of a built-in wood', async () => {
        const uri = uriOf('workshop.kerf');
        const text = textOf('workshop.kerf');
        await client.open(uri, text);
        await client.diagnostics(uri, () => true);
        const line = text.split('\n').findIndex((candidate) => candidate.includes('wood black-walnut'));
        const character = text.split('\n')[line]!.indexOf('black-walnut') + 3;
        const found = await client.connection.sendRequest<(Location & { targetUri?: string })[]>('textDocument/definition', {
            textDocument: { uri },
            position: { line, character },
        });
        expect(found.map((one) => one.targetUri ?? one.uri)).toEqual(['kerfbook-stock:/woods.kerf']);
        const { text: stock } = await client.connection.sendRequest<{ text: string }>('workspace/textDocumentContent', {
            uri: 'kerfbook-stock:/woods.kerf',
        });
        expect(stock).toContain('wood black-walnut');
    });

    it('explains a built-in wood and a word, and proposes what a name stands for only when it is looked at', async () => {
        const uri = uriOf('workshop.kerf');
        const text = textOf('workshop.kerf');
        await client.open(uri, text);
        const before = text.split('\n').findIndex((line) => line.includes('wood black-walnut'));
        const character = text.split('\n')[before]!.indexOf('black-walnut') + 3;
        const textDocument = { uri };
        const hover = (at: number) =>
            client.connection.sendRequest<Hover>('textDocument/hover', {
                textDocument,
                position: { line: before, character: at },
            });
        expect(JSON.stringify((await hover(character)).contents)).toContain('density');
        expect(JSON.stringify((await hover(character - 6)).contents)).toContain('The wood it is made of.');
        const { items } = await client.connection.sendRequest<CompletionList>('textDocument/completion', {
            textDocument,
            position: { line: before, character: character - 3 },
        });
        const oak = items.find(({ label }) => label === 'white-oak')!;
        expect(oak).toMatchObject({ detail: expect.stringMatching(/^wood · /) });
        expect(oak.documentation).toBeUndefined();
        const resolved = await client.connection.sendRequest<CompletionItem>('completionItem/resolve', oak);
        expect(JSON.stringify(resolved.documentation)).toContain('Quercus');
    });

    it('proposes the parts of the art and the rules that can be allowed', async () => {
        const uri = uriOf('new.kerf');
        const head = 'recipe r {\n art heron "art/heron.svg"\n blank b { of b }\n engrave e on b {\n';
        const labelsAfter = async (version: number, line: string) => {
            await client.change(uri, version, `${head}${line}\n }\n}`);
            const position = { line: 4, character: line.length };
            const { items } = await client.connection.sendRequest<CompletionList>('textDocument/completion', {
                textDocument: { uri },
                position,
            });
            return items.map(({ label }) => label);
        };
        await client.open(uri, '');
        await client.diagnostics(uri, () => true);
        expect((await labelsAfter(2, '  art heron ')).some((label) => label.startsWith('#'))).toBe(true);
        expect(await labelsAfter(3, '  allow ')).toContain('not-mirrored');
        expect(await labelsAfter(4, '  art heron at 3, 4 ')).toContain('mm');
        await client.change(uri, 5, `${head}  allow no-such-rule because "x"\n }\n}`);
        await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'unknown-rule'));
    });

    it('answers with a bench view, a checklist and the files', async () => {
        const uri = uriOf('tide-coaster.kerf');
        await client.open(uri, textOf('tide-coaster.kerf'));
        await client.diagnostics(uri, () => true);
        const view = await client.connection.sendRequest<SentPicture>(requests.bench.method, { uri });
        expect(view.frames).toHaveLength(view.steps.length + 1);
        for (const frame of view.frames) {
            for (const name of frame.pieces)
                for (const layer of view.pieces[name]!.layers) expect(view.paths[layer.path]).toMatch(/^M|^$/);
        }
        const list = await client.connection.sendRequest<Checklist>(requests.checklist.method, { uri });
        expect(new Set(list.items.map((item) => item.id)).size).toBe(view.steps.length);
        const built = await client.connection.sendRequest<BuildAnswer>(requests.build.method, { uri });
        expect(built.problems).toEqual([]);
        expect(built.files.map((file) => file.path)).toEqual(
            expect.arrayContaining(['setup-1-disc.svg', 'setup-1-disc.ngc', 'job-sheet.html', 'shopping-list.csv', 'plan.json']),
        );
    });

    it('explains a rule and knows nothing of others', async () => {
        const textAt = (uri: string) => client.connection.sendRequest<{ text: string }>('workspace/textDocumentContent', { uri });
        expect((await textAt('kerfbook-page:/not-mirrored.md')).text).toContain('**Why it matters.**');
        await expect(textAt('kerfbook-page:/no-such-rule.md')).rejects.toThrow('There is no text');
    });

    it('keeps planning while a line is half typed', async () => {
        const uri = uriOf('gate-sign.kerf');
        await client.open(uri, textOf('gate-sign.kerf').replace('tone 85 %', 'tone'));
        await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'syntax'));
        const view = await client.connection.sendRequest<SentPicture>(requests.bench.method, { uri });
        expect(view.stale).toBeDefined();
        expect(view.steps.length).toBeGreaterThan(3);
    });
});
