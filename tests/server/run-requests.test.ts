import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { WrittenAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RunParams, TakenRunAnswer, TakeRunParams, WrittenRunAnswer } from '../../shared/view/written-run';
import type { LanguageClient } from '../kit/language-client';
import { type ServedPlate, servePlate } from '../kit/served-plate';

const recipe = `use "shop.kerf"
recipe plate "Plate" {
  issue 2
  laser shed
  blank b { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on b { circle 30 mm  depth 0.5 mm }
}
`;
const run: Omit<RunParams, 'uri'> = {
    recipe: 'plate',
    date: '2026-11-28',
    revision: 2,
    laser: 'shed',
    lines: ['pocket of walnut-12 80 % at 300 mm/s x 2 pitch 0.1 mm planned 0.5 mm +- 0.05 mm depth 0.53 mm'],
    notes: ['Flush.'],
};
let plate: ServedPlate;
let folder: string;
let client: LanguageClient;
const uriOf = (name: string): string => plate.uriOf(name);
const runs = (): string[] => (existsSync(path.join(folder, 'runs')) ? readdirSync(path.join(folder, 'runs')) : []);

beforeEach(async () => {
    plate = await servePlate(recipe);
    ({ folder, client } = plate);
});
afterEach(() => plate.stop());

const write = (params: Partial<RunParams> = {}): Promise<WrittenRunAnswer> =>
    client.connection.sendRequest<WrittenRunAnswer>(requests.writeRun.method, { uri: uriOf('plate.kerf'), ...run, ...params });

describe('a finished run', () => {
    it('gets a file of its own, and a second one of the day another; the recipe’s file stays as it was', async () => {
        const [first, second] = [await write(), await write()];
        if ('problem' in first || 'problem' in second) throw new Error(JSON.stringify([first, second]));
        expect(first.uri).not.toBe(second.uri);
        expect(runs()).toHaveLength(2);
        for (const name of runs()) {
            expect(name).toMatch(/^2026-11-28-plate-[a-z2-9]{5}\.kerf$/);
            const text = readFileSync(path.join(folder, 'runs', name), 'utf8');
            expect(text).toBe(first.text);
            expect(text).toMatch(/^run plate 2026-11-28 \{\n {2}of plan [0-9a-f]{8}\n {2}issue 2\n {2}laser shed\n/);
        }
        expect(readFileSync(path.join(folder, 'plate.kerf'), 'utf8')).toBe(recipe);
    });

    it('is not written where a file or a link is in the way, and nothing is left behind', async () => {
        const outside = mkdtempSync(path.join(tmpdir(), 'kerfbook-outside-'));
        symlinkSync(outside, path.join(folder, 'runs'));
        expect(await write()).toHaveProperty('problem');
        expect(readdirSync(outside)).toEqual([]);
        rmSync(path.join(folder, 'runs'));
        rmSync(outside, { recursive: true });
        writeFileSync(path.join(folder, 'runs'), 'mine');
        const answer = await write();
        expect(answer).toMatchObject({ problem: expect.stringContaining('runs is a file, and a folder is needed there') });
        expect(readFileSync(path.join(folder, 'runs'), 'utf8')).toBe('mine');
        expect(readdirSync(folder).toSorted()).toEqual(['plate.kerf', 'runs', 'shop.kerf']);
    });

    it('is not written of a recipe that is not there, nor one that could not be read back', async () => {
        expect(await write({ recipe: 'other' })).toMatchObject({ problem: expect.stringContaining('no recipe called “other”') });
        expect(await write({ lines: ['pocket } board x {'] })).toHaveProperty('problem');
        expect(runs()).toEqual([]);
    });

    it('has a name that a file can have, whatever the recipe is called', async () => {
        mkdirSync(path.join(folder, 'far'));
        const name = `füße_${'x'.repeat(200)}`;
        const text = `use "../shop.kerf"\nrecipe ${name} "Plate" { issue 1  laser shed }\n`;
        await client.open(uriOf('far/r.kerf'), text);
        const answer = await write({ uri: uriOf('far/r.kerf'), recipe: name, lines: [] });
        expect(answer).toHaveProperty('uri');
        const [file = ''] = readdirSync(path.join(folder, 'far', 'runs'));
        expect(file.normalize('NFC')).toMatch(/^2026-11-28-füße-x{50,60}-[a-z2-9]{5}\.kerf$/);
    });

    it('is still written below its recipe where that is asked for, with the same mark', async () => {
        const first = await write();
        const below = await client.connection.sendRequest<WrittenAnswer>(requests.run.method, {
            uri: uriOf('plate.kerf'),
            ...run,
        });
        if ('problem' in first || 'problem' in below) throw new Error(JSON.stringify([first, below]));
        expect(below.edits[0]?.text.trim()).toBe(first.text.trim());
    });
});

describe('a run that was saved on a tablet', () => {
    const name = '2026-11-28-plate-abcde.kerf';
    const text = `run plate 2026-11-28 {\n  of plan 0123abcd\n  issue 2\n  laser shed\n  engrave pocket of walnut-12 80 % at 300 mm/s depth 0.53 mm\n}\n`;
    const take = (params: Partial<TakeRunParams> = {}): Promise<TakenRunAnswer> =>
        client.connection.sendRequest<TakenRunAnswer>(requests.takeRun.method, {
            ...{ uri: uriOf('plate.kerf'), recipe: 'plate', name, text },
            ...params,
        });

    it('lies beside the others under its own name, and a second time changes nothing', async () => {
        expect(await take()).toMatchObject({ text });
        expect(await take({ text: text.replaceAll('\n', '\r\n') })).toMatchObject({ known: true });
        expect(runs()).toEqual([name]);
        expect(readFileSync(path.join(folder, 'runs', name), 'utf8')).toBe(text);
    });

    it('does not take the place of another', async () => {
        await take();
        const other = await take({ text: text.replace('0.53', '0.48') });
        expect(other).toMatchObject({ problem: expect.stringContaining('is there already and says something else') });
        expect(readFileSync(path.join(folder, 'runs', name), 'utf8')).toBe(text);
    });

    it.each([
        ['nothing', ''],
        ['half of one', text.slice(0, 60)],
        ['two of them', text + text],
        ['something beside it', `${text}glue pot { kind wood-glue }\n`],
        ['a line into another file', `use "../../other.kerf"\n${text}`],
        ['a day that is none', text.replace('2026-11-28', '2026-02-30')],
    ])('is refused where the file holds %s', async (_what, wrong) => {
        expect(await take({ text: wrong })).toMatchObject({ problem: expect.stringContaining('something else than one run') });
        expect(runs()).toEqual([]);
    });

    it('is refused where it is of another recipe, which is named', async () => {
        const answer = await take({ text: text.replace('run plate', 'run tray') });
        expect(answer).toMatchObject({ problem: expect.stringContaining('is a run of “tray”, not of “plate”') });
        expect(runs()).toEqual([]);
    });

    it.each([
        '../2026-11-28-plate-abcde.kerf',
        'a/b.kerf',
        'plate.kerf',
        '2026-11-28-..-abcde.kerf',
        '2026-11-28-pl/te-abcde.kerf',
    ])('is refused under the name %s', async (wrong) => {
        await expect(take({ name: wrong })).rejects.toThrow();
        expect(readdirSync(folder).toSorted()).toEqual(['plate.kerf', 'shop.kerf']);
    });
});

it('files for machine and bench are not written where a file is in the way, which is told once', async () => {
    writeFileSync(path.join(folder, 'made'), 'mine');
    const answer = await client.connection.sendRequest(requests.writeRecipe.method, {
        uri: uriOf('plate.kerf'),
        recipe: 'plate',
    });
    expect(answer).toMatchObject({
        written: 0,
        problems: [expect.stringContaining('made is a file, and a folder is needed there')],
    });
    expect(readFileSync(path.join(folder, 'made'), 'utf8')).toBe('mine');
    expect(readdirSync(folder).toSorted()).toEqual(['made', 'plate.kerf', 'shop.kerf']);
});
