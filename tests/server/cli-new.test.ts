import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { samples } from '../kit/new-recipe-shop';
import { TemporaryRepository } from '../kit/temporary-repository';

const samplesFolder = fileURLToPath(new URL('../../samples', import.meta.url));

let shop: TemporaryRepository;
beforeEach(() => {
    shop = new TemporaryRepository({ 'workshop.kerf': samples('workshop.kerf'), 'art/heron.svg': samples('art/heron.svg') });
});
afterEach(() => shop.remove());

const lid = ['new', 'Slipway', 'lid', '--technique', 'inlay', '--board', 'walnut-12', '--laser', 'shed'];

it('kerfbook new writes a recipe that kerfbook check has nothing against, and never writes over one', async () => {
    const made = await shop.kerfbook([...lid, '--art', 'art/heron.svg', '--size', '240x200']);
    expect(made).toMatchObject({ code: 0, out: 'slipway-lid.kerf\n', err: '' });
    const text = readFileSync(path.join(shop.folder, 'slipway-lid.kerf'), 'utf8');
    expect(text).toContain('size 240 x 200 mm');
    const checked = await shop.kerfbook(['check', '--strict', 'slipway-lid.kerf']);
    expect(checked.out).toContain('0 errors, 0 warnings');
    expect(checked.code).toBe(0);
    const again = await shop.kerfbook([...lid, '--art', 'art/heron.svg']);
    expect(again.out).toBe('slipway-lid-2.kerf\n');
});

it('kerfbook new fills with a resin of the shop, or with a colour of which one is written', async () => {
    const coaster = (...more: string[]) =>
        shop.kerfbook(['new', 'Ebb', '--technique', 'filled', '--board', 'cherry-6', '--laser', 'shed', ...more]);
    expect(await coaster('--colour', 'tide-blue')).toMatchObject({ code: 0, out: 'ebb.kerf\nart/ebb.svg\n' });
    expect(readFileSync(path.join(shop.folder, 'ebb.kerf'), 'utf8')).toMatch(/fill \w+ with tide-blue/);
    expect(await coaster('--colour', 'ochre')).toMatchObject({ code: 0 });
    const tinted = readFileSync(path.join(shop.folder, 'ebb-2.kerf'), 'utf8');
    expect(tinted).toMatch(/fill \w+ with tinted-epoxy/);
    expect(tinted).toContain('colour #b98a2f');
    expect(tinted).toMatch(/check \w+ \{\n +depth /);
    const checked = await shop.kerfbook(['check', '--strict', 'ebb.kerf', 'ebb-2.kerf']);
    expect(checked.out).toContain('0 errors, 0 warnings');
    expect(await coaster('--colour', 'mauve')).toMatchObject({
        code: 2,
        err: expect.stringContaining('There is no resin and no colour mauve; there is tinted-epoxy, tide-blue,'),
    });
    expect(await shop.kerfbook([...lid, '--colour', 'blue'])).toMatchObject({
        code: 2,
        err: expect.stringContaining('--technique filled'),
    });
});

it('kerfbook new begins where there is nothing, with a drawing or a picture of its own', async () => {
    const bare = new TemporaryRepository({});
    const made = await bare.kerfbook(['new', 'Ebb', '--technique', 'picture', '--board', 'black-cherry', '--laser', 'co2']);
    expect(made).toMatchObject({ code: 0, out: 'ebb.kerf\nworkshop.kerf\nart/ebb.png\n', err: '' });
    const checked = await bare.kerfbook(['check', '--strict']);
    expect(checked).toMatchObject({ code: 0, out: expect.stringContaining('2 files: 0 errors, 0 warnings') });
    bare.remove();
});

it('kerfbook new --samples copies the sample workshop, all of it or nothing', async () => {
    const program = fileURLToPath(new URL('../../dist/cli.cjs', import.meta.url));
    const built = (args: string[]) => spawnSync(process.execPath, [program, ...args], { cwd: shop.folder, encoding: 'utf8' });
    const made = built(['new', '--samples', '--in', 'tryout']);
    expect(made).toMatchObject({ status: 0, stderr: '' });
    expect(made.stdout.split('\n')).toContain(path.join('tryout', 'art', 'heron.svg'));
    const copied = readdirSync(path.join(shop.folder, 'tryout'), { recursive: true }).sort();
    expect(copied).toEqual(readdirSync(samplesFolder, { recursive: true }).sort());
    expect(readFileSync(path.join(shop.folder, 'tryout/art/gull.png'))).toEqual(
        readFileSync(path.join(samplesFolder, 'art/gull.png')),
    );
    const checked = await shop.kerfbook(['check', 'tryout/tide-coaster.kerf']);
    expect(checked.code).toBe(0);
    // The shop has a workshop.kerf and art of its own.
    const refused = built(['new', '--samples']);
    expect(refused.stderr).toContain('is there already, and nothing was written');
    expect(refused.status).toBe(2);
    expect(existsSync(path.join(shop.folder, 'tide-coaster.kerf'))).toBe(false);
});

it.each([
    [['new', 'Lid', '--samples'], '--samples has names of its own'],
    [['new'], 'Say what the recipe is to be called.'],
    [['new', 'Lid'], 'Say --technique: engraving, filled, inlay, picture.'],
    [['new', 'Lid', '--technique', 'filled', '--laser', 'shed'], 'Say --board: walnut-12'],
    [['new', 'Lid', '--technique', 'filled', '--board', 'oak', '--laser', 'shed'], 'There is no board oak; there is walnut-12'],
    [[...lid, '--size', 'large'], '--size is two numbers of mm'],
    [[...lid, '--art', '../elsewhere.svg'], 'lies outside the workspace'],
])('%j: %s', async (args, problem) => {
    const { code, err } = await shop.kerfbook(args);
    expect(err).toContain(problem);
    expect(code).toBe(2);
    expect(existsSync(path.join(shop.folder, 'lid.kerf'))).toBe(false);
});
