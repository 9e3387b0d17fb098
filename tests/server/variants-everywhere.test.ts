import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CodeLens } from 'vscode-languageserver';
import type { Where } from '../../shared/quantity/where';
import type { BuildAnswer, Checklist } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { SentPicture } from '../../shared/view/sent-picture';
import { LanguageClient } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const file = 'tray-variants.kerf';
let folder: string;
let client: LanguageClient;
const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).toString();
const textOf = (name: string): string => readFileSync(path.join(folder, name), 'utf8');

beforeAll(async () => {
    folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-variants-')));
    cpSync(samples, folder, { recursive: true });
    const options = { commands: ['kerfbook.openBenchViewToSide', 'kerfbook.writeFiles'] };
    ({ client } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), { options }));
    await client.open(uriOf(file), textOf(file));
    await client.diagnostics(uriOf(file), () => true);
});
afterAll(() => {
    client.stop();
    rmSync(folder, { recursive: true, force: true });
});

const ask = <Answer>(what: string, params: object): Promise<Answer> =>
    client.connection.sendRequest<Answer>(what, { uri: uriOf(file), ...params });

/** The words at a place, whichever file it is in. */
function wordsAt({ uri, offset, length }: Where): string {
    return readFileSync(fileURLToPath(uri), 'utf8').slice(offset, offset + length);
}

describe('a variant wherever recipes are shown', () => {
    it('bench view: the variant’s own sizes and steps, each leading to where it is written', async () => {
        const large = await ask<SentPicture>(requests.bench.method, { recipe: 'large-tray' });
        expect(large.title).toBe('Large heron tray');
        expect(large.recipes.map(({ name }) => name)).toEqual(['large-tray', 'class-tray']);
        const tray = large.blanks.find(({ name }) => name === 'tray');
        expect([tray?.width, tray?.height]).toEqual([360, 206]);
        for (const { where } of large.steps) expect(wordsAt(where)).toMatch(/^[a-z]+$/);
        expect(large.steps.some(({ where }) => where.uri === uriOf('heron-tray.kerf'))).toBe(true);
        expect(large.steps.some(({ where }) => where.uri === uriOf(file))).toBe(true);
        const evening = await ask<SentPicture>(requests.bench.method, { recipe: 'class-tray' });
        expect(evening.steps.map(({ title }) => title)).not.toContain('Finish tray with shellac-coat');
        expect(evening.frames).toHaveLength(evening.steps.length + 1);
    });

    it('only the variant’s own numbers can be typed over or dragged, as they stand in its text', async () => {
        const { blanks, steps } = await ask<SentPicture>(requests.bench.method, { recipe: 'large-tray' });
        const sizes = blanks.flatMap(({ size }) => (size === undefined ? [] : [size]));
        expect(sizes.map(({ text, where }) => [text, wordsAt(where)])).toEqual([
            ['360 x 206 mm', '360 x 206 mm'],
            ['196 x 196 mm', '196 x 196 mm'],
        ]);
        const facts = steps.flatMap((step) => step.facts).filter(({ written }) => written !== undefined);
        for (const { written, where } of facts) {
            expect(where!.uri).toBe(uriOf(file));
            expect(wordsAt(where!)).toBe(written);
        }
        expect(steps.flatMap(({ movable }) => movable?.where.uri ?? [])).toEqual([uriOf(file), uriOf(file)]);
    });

    it('a base above it in the same file stays as it is too', async () => {
        const own = 'engrave pocket on lid { circle 40 mm at 30, 30 mm  depth 3 mm  air off }';
        const text = `use "workshop.kerf"
recipe plate { laser shed  blank lid { of walnut-12  size 100 x 80 mm  grain along width }  ${own} }
recipe deep based on plate { engrave pocket { depth 4 mm } }
`;
        writeFileSync(path.join(folder, 'plate.kerf'), text);
        await client.open(uriOf('plate.kerf'), text);
        const view = (recipe: string) => ask<SentPicture>(requests.bench.method, { uri: uriOf('plate.kerf'), recipe });
        const offered = ({ blanks, steps }: SentPicture): (string | undefined)[] => [
            ...blanks.map(({ size }) => size?.text),
            steps[0]!.movable && wordsAt(steps[0]!.movable.where),
            ...steps[0]!.facts.flatMap(({ written }) => written ?? []),
        ];
        expect(offered(await view('plate'))).toEqual(['100 x 80 mm', '30, 30 mm', '3 mm']);
        expect(offered(await view('deep'))).toEqual([undefined, undefined, '4 mm']);
    });

    it('checklist: what is left out is not there, what is put in is, in its place', async () => {
        const { items, title, revision } = await ask<Checklist>(requests.checklist.method, { recipe: 'class-tray' });
        expect([title, revision]).toEqual(['Heron tray of the evening class', 1]);
        const labels = items.map(({ label }) => label);
        expect(labels[0]).toBe('Sand tray');
        expect(labels.indexOf('Wipe the squeeze-out off the edges')).toBe(labels.indexOf('Peel bird') + 1);
        expect(labels.some((label) => label.startsWith('Finish'))).toBe(false);
        const burnt = items.find(({ burnt: each }) => each?.step === 'pocket')?.burnt;
        expect(burnt?.words).toMatch(/^of ash-quarter /);
    });

    it('files for machine and bench: named for the variant, at its size', async () => {
        const { files, problems } = await ask<BuildAnswer>(requests.build.method, { recipe: 'large-tray' });
        expect(problems).toEqual([]);
        const drawing = files.find(({ path: at }) => at.endsWith('setup-1-tray.svg'));
        expect(drawing?.text).toMatch(/width="360mm" height="206mm"/);
        const sheet = files.find(({ path: at }) => at.endsWith('.html'));
        expect(sheet?.text).toContain('Large heron tray');
    });

    it('code lenses: above each variant its own time, materials and commands', async () => {
        await client.diagnostics(uriOf(file), (all) => all.length > 0);
        const lenses = await client.connection.sendRequest<CodeLens[]>('textDocument/codeLens', {
            textDocument: { uri: uriOf(file) },
        });
        const lines = textOf(file).split('\n');
        for (const name of ['large-tray', 'class-tray']) {
            const line = lines.findIndex((text) => text.startsWith(`recipe ${name}`));
            const here = lenses.filter(({ range }) => range.start.line === line).map(({ command }) => command!);
            expect(here.filter(({ arguments: given }) => given?.[1] === name)).toHaveLength(2);
            expect(here[0]!.title).toContain('of laser');
            expect(here[1]!.title).toContain(name === 'large-tray' ? 'walnut-12 lot spring 1 sheet,' : 'ash-quarter');
        }
    });
});

describe('findings of a base in other files', () => {
    it('stand in each variant only where they hold, near and far', async () => {
        const base = `use "workshop.kerf"
recipe plate {
  laser shed
  blank lid { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on lid { circle 40 mm  depth 3 mm  air on }
}
`;
        const variants = `use "plate.kerf"
recipe first based on plate { make 2 }
recipe second based on first { engrave pocket { air off } }
recipe third based on second { engrave pocket { air on } }
recipe fourth based on first { without engrave pocket }
recipe fifth based on plate { engrave pocket { allow air-while-engraving because "smoke is drawn off" } }
`;
        writeFileSync(path.join(folder, 'plate.kerf'), base);
        writeFileSync(path.join(folder, 'plates.kerf'), variants);
        await client.open(uriOf('plate.kerf'), base);
        await client.open(uriOf('plates.kerf'), variants);
        const lines = async (name: string): Promise<number[]> =>
            (await client.diagnostics(uriOf(name), (all) => all.some(({ code }) => code === 'air-while-engraving')))
                .filter(({ code }) => code === 'air-while-engraving')
                .map(({ range }) => range.start.line);
        expect(await lines('plate.kerf')).toEqual([4]);
        expect((await lines('plates.kerf')).sort()).toEqual([1, 3]);
    });
});
