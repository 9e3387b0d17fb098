import {
    chmodSync,
    existsSync,
    lstatSync,
    mkdirSync,
    mkdtempSync,
    readdirSync,
    readFileSync,
    realpathSync,
    rmSync,
    symlinkSync,
    writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { TemporaryRepository } from '../kit/temporary-repository';
import { coaster, otherRecipe, repository, shopFiles } from './shop-files';

function elsewhere(): string {
    const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-elsewhere-')));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    return folder;
}

/** Everything below a folder, by its path there. */
function filesIn(folder: string): string[] {
    if (!existsSync(folder)) return [];
    return readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
}

const made = (shop: TemporaryRepository, ...names: string[]): string => path.join(shop.folder, 'made', ...names);
const text = (file: string): string => readFileSync(file, 'utf8');

describe('links are never followed when files are written', () => {
    it('a link in the place of a file gives way to the file', async () => {
        const shop = repository();
        const start = path.join(elsewhere(), 'start-file');
        writeFileSync(start, 'mine');
        mkdirSync(made(shop, 'coaster'), { recursive: true });
        symlinkSync(start, made(shop, 'coaster', 'setup-1-disc.ngc'));
        symlinkSync(path.join(start, '..', 'not-there'), made(shop, 'coaster', 'setup-1-disc.svg'));
        expect(await shop.kerfbook(['build', 'coaster.kerf'])).toMatchObject({ code: 0, err: '' });
        expect(text(start)).toBe('mine');
        expect(existsSync(path.join(start, '..', 'not-there'))).toBe(false);
        expect(lstatSync(made(shop, 'coaster', 'setup-1-disc.ngc')).isFile()).toBe(true);
        expect(text(made(shop, 'coaster', 'setup-1-disc.ngc'))).toContain('M2');
    });

    it.each(['made', 'made/coaster'])('nothing is written through a link %s out of the folder', async (link) => {
        const shop = repository();
        const target = elsewhere();
        mkdirSync(path.dirname(path.join(shop.folder, link)), { recursive: true });
        symlinkSync(target, path.join(shop.folder, link));
        const { code, out, err } = await shop.kerfbook(['build', 'coaster.kerf']);
        expect(code).toBe(2);
        expect(out).toBe('');
        expect(err).toMatch(/^made\/coaster.* cannot be written: links there lead out of the workspace\. .*\n$/);
        expect(filesIn(target)).toEqual([]);
    });

    it('nor through one that leads nowhere yet, nor into a folder of git', async () => {
        const shop = repository();
        const target = path.join(elsewhere(), 'new');
        symlinkSync(target, made(shop));
        expect((await shop.kerfbook(['build', 'coaster.kerf'])).code).toBe(2);
        expect(existsSync(target)).toBe(false);
        rmSync(made(shop));
        symlinkSync(path.join(shop.folder, '.git', 'hooks'), made(shop));
        expect((await shop.kerfbook(['build', 'coaster.kerf'])).code).toBe(2);
        expect(existsSync(path.join(shop.folder, '.git', 'hooks', 'coaster'))).toBe(false);
    });

    it('a new recipe and a coupon keep to it too', async () => {
        const shop = repository();
        const target = elsewhere();
        rmSync(path.join(shop.folder, 'art'), { recursive: true });
        symlinkSync(target, path.join(shop.folder, 'art'));
        const fresh = ['new', 'Tide', '--technique', 'engraving', '--board', 'ash-10', '--laser', 'shed'];
        const begun = await shop.kerfbook(fresh);
        expect(begun.err).toContain('links there lead out of the workspace');
        expect(begun.code).toBe(2);
        symlinkSync(target, path.join(shop.folder, 'stock', 'made'));
        expect((await shop.kerfbook(['coupon', 'ash-10', 'shed'])).code).toBe(2);
        expect(filesIn(target)).toEqual([]);
        expect(existsSync(path.join(shop.folder, 'tide.kerf'))).toBe(false);
    });

    it('a folder that is named for it is written to, wherever it lies', async () => {
        const shop = repository();
        const target = elsewhere();
        expect((await shop.kerfbook(['build', 'coaster.kerf', '--out', path.join(target, 'a', 'b')])).code).toBe(0);
        expect(filesIn(path.join(target, 'a', 'b', 'coaster'))).toContain('job-sheet.html');
        symlinkSync(shop.folder, path.join(target, 'plate'));
        expect((await shop.kerfbook(['build', 'plate.kerf', '--out', target])).code).toBe(2);
    });
});

describe('what cannot be written', () => {
    it('a file where the folder should be, a folder where a file should be: one sentence, and nothing new', async () => {
        const shop = repository();
        writeFileSync(made(shop), 'something else');
        const first = await shop.kerfbook(['build', 'coaster.kerf']);
        expect(first).toMatchObject({ code: 2, out: '' });
        expect(first.err).toMatch(
            /^made\/coaster cannot be written: made is a file, and a folder is needed there\. Move or rename it\.\n$/,
        );
        expect(text(made(shop))).toBe('something else');
        rmSync(made(shop));
        mkdirSync(made(shop, 'coaster', 'shopping-list.csv'), { recursive: true });
        const second = await shop.kerfbook(['build', 'coaster.kerf']);
        expect(second.code).toBe(2);
        expect(second.err).toMatch(
            /^made\/coaster\/shopping-list\.csv cannot be written: a folder of that name is in the way\. Move or rename it\.\n$/,
        );
        expect(filesIn(made(shop))).toEqual(['coaster', 'coaster/shopping-list.csv']);
    });

    it('a file that is protected against writing stays as it is', async () => {
        const shop = repository();
        await shop.kerfbook(['build', 'coaster.kerf']);
        const list = made(shop, 'coaster', 'job-sheet.html');
        writeFileSync(list, 'kept');
        chmodSync(list, 0o444);
        const { code, err } = await shop.kerfbook(['build', 'coaster.kerf', '--force']);
        expect(code).toBe(2);
        expect(err).toContain('job-sheet.html cannot be written: writing is not allowed there. Allow it');
        expect(text(list)).toBe('kept');
    });
});

describe('recipes that would share a folder', () => {
    const house = (name: string): string => otherRecipe.replace('recipe plate', `recipe ${name}`);

    it('names of every script have folders of their own', async () => {
        const shop = repository({
            ...shopFiles,
            'a.kerf': ['дом', 'кот', 'vögel', 'vo-gel', 'constructor']
                .map(house)
                .join('')
                .replaceAll(/(?<=\n)use .*\n/g, ''),
        });
        expect(await shop.kerfbook(['build', 'a.kerf'])).toMatchObject({ code: 0, err: '' });
        expect(readdirSync(made(shop)).sort()).toEqual(['constructor', 'vo-gel', 'vögel', 'дом', 'кот']);
    });

    it.each([
        ['the same name in two files', { 'a.kerf': house('plate'), 'plate.kerf': otherRecipe }],
        ['names that differ in capitals only', { 'plate.kerf': otherRecipe, 'b.kerf': house('Plate') }],
    ])('%s: refused before anything is written', async (_, files) => {
        const shop = repository({ ...shopFiles, ...files });
        const { code, out, err } = await shop.kerfbook(['build', ...Object.keys(files)]);
        expect(err).toMatch(
            /^Nothing was written: .*plate.* and .*plate.* would share a folder\. Rename one of them, or build them apart with --out\.\n$/i,
        );
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(existsSync(made(shop))).toBe(false);
    });

    it('and one after the other: the second is refused as long as the first is there', async () => {
        const shop = repository({ ...shopFiles, 'a.kerf': house('plate') });
        expect((await shop.kerfbook(['build', 'a.kerf'])).code).toBe(0);
        const sheet = text(made(shop, 'plate', 'job-sheet.html'));
        const second = await shop.kerfbook(['build', 'plate.kerf']);
        expect(second.err).toContain('its folder holds the files of recipe plate in ../../a.kerf');
        expect(second.code).toBe(2);
        expect(text(made(shop, 'plate', 'job-sheet.html'))).toBe(sheet);
        rmSync(path.join(shop.folder, 'a.kerf'));
        expect((await shop.kerfbook(['build', 'plate.kerf'])).code).toBe(0);
    });
});

describe('what a person has changed since it was written', () => {
    it('is kept, and the new file lies beside it', async () => {
        const shop = repository();
        await shop.kerfbook(['build', 'coaster.kerf']);
        const machine = made(shop, 'coaster', 'setup-1-disc.ngc');
        const first = text(machine);
        writeFileSync(machine, `${first}(mine)\n`);
        shop.write({ 'coaster.kerf': coaster.replace('depth 0.5 mm', 'depth 0.6 mm') });
        const again = await shop.kerfbook(['build', 'coaster.kerf']);
        expect(again.code).toBe(0);
        expect(again.err).toBe(
            'made/coaster/setup-1-disc.ngc was changed by hand and is kept; the new one is made/coaster/setup-1-disc.new.ngc (--force writes over it).\n',
        );
        expect(text(machine)).toBe(`${first}(mine)\n`);
        const fresh = text(made(shop, 'coaster', 'setup-1-disc.new.ngc'));
        expect(fresh).not.toBe(first);
        // Once more: the same, not a third file.
        const names = filesIn(made(shop));
        expect((await shop.kerfbook(['build', 'coaster.kerf'])).err).toBe(again.err);
        expect(filesIn(made(shop))).toEqual(names);
        // The new one changed by hand too is kept as well.
        writeFileSync(made(shop, 'coaster', 'setup-1-disc.new.ngc'), 'mine too');
        await shop.kerfbook(['build', 'coaster.kerf']);
        expect(text(made(shop, 'coaster', 'setup-1-disc.new.ngc'))).toBe('mine too');
        expect(text(made(shop, 'coaster', 'setup-1-disc.new-2.ngc'))).toBe(fresh);
        const forced = await shop.kerfbook(['build', 'coaster.kerf', '--force']);
        expect(text(machine)).toBe(fresh);
        expect(forced.err).toMatch(/setup-1-disc\.new-2\.ngc is left from an earlier writing \(--clean takes it away\)/);
        expect(forced.err).toMatch(/setup-1-disc\.new\.ngc is left from an earlier writing and was changed by hand/);
    });

    it('so is what was never ours; line ends that git changed are no change', async () => {
        const shop = repository();
        mkdirSync(made(shop, 'coaster'), { recursive: true });
        writeFileSync(made(shop, 'coaster', 'plan.json'), 'somebody’s');
        await shop.kerfbook(['build', 'coaster.kerf']);
        expect(text(made(shop, 'coaster', 'plan.json'))).toBe('somebody’s');
        const list = made(shop, 'coaster', 'shopping-list.csv');
        writeFileSync(list, text(list).replaceAll(/\r?\n/g, '\r\n'));
        shop.write({ 'coaster.kerf': coaster.replace('make 2', 'make 3') });
        await shop.kerfbook(['build', 'coaster.kerf']);
        expect(existsSync(made(shop, 'coaster', 'shopping-list.new.csv'))).toBe(false);
    });

    it('a manifest that is broken or forged loses nothing and reaches nothing outside', async () => {
        const shop = repository();
        await shop.kerfbook(['build', 'coaster.kerf']);
        const manifest = made(shop, 'coaster', 'written.json');
        const value = JSON.parse(text(manifest));
        const hash = value.files['plan.json'];
        writeFileSync(made(shop, 'kept.json'), text(made(shop, 'coaster', 'plan.json')));
        writeFileSync(
            manifest,
            JSON.stringify({ ...value, files: { ...value.files, '../kept.json': hash, '/etc/hostname': hash } }),
        );
        await shop.kerfbook(['build', 'coaster.kerf', '--clean']);
        expect(existsSync(made(shop, 'kept.json'))).toBe(true);
        writeFileSync(manifest, '<<<<<<< ours');
        writeFileSync(made(shop, 'coaster', 'plan.json'), 'mine');
        expect((await shop.kerfbook(['build', 'coaster.kerf'])).code).toBe(0);
        expect(text(made(shop, 'coaster', 'plan.json'))).toBe('mine');
    });
});

describe('what an earlier build left', () => {
    const twoSided = coaster.replace(
        '  sand disc',
        '  blank lid { of ash-10 size 100 x 100 mm grain along width }\n  engrave mark on lid { art flag depth 0.3 mm air off }\n  sand disc',
    );

    it('is named, and taken away only when asked for and only if it is still as written', async () => {
        const shop = repository({ ...shopFiles, 'coaster.kerf': twoSided });
        await shop.kerfbook(['build', 'coaster.kerf', '--force']);
        const lid = filesIn(made(shop, 'coaster')).filter((name) => name.includes('lid'));
        expect(lid.length).toBeGreaterThanOrEqual(2);
        writeFileSync(made(shop, 'coaster', 'notes.txt'), 'mine');
        writeFileSync(made(shop, 'coaster', lid[0]!), 'changed by hand');
        shop.write({ 'coaster.kerf': coaster });
        const plain = await shop.kerfbook(['build', 'coaster.kerf']);
        expect(plain.err).toContain(`made/coaster/${lid[1]} is left from an earlier writing (--clean takes it away).`);
        const dry = await shop.kerfbook(['build', 'coaster.kerf', '--clean', '--dry-run']);
        expect(dry.out).toContain(`made/coaster/${lid[1]}  (would be taken away)`);
        expect(existsSync(made(shop, 'coaster', lid[1]!))).toBe(true);
        const clean = await shop.kerfbook(['build', 'coaster.kerf', '--clean']);
        expect(clean.out).toContain(`made/coaster/${lid[1]}  (taken away)`);
        expect(clean.err).toContain(`made/coaster/${lid[0]} is left from an earlier writing and was changed by hand`);
        expect(existsSync(made(shop, 'coaster', lid[1]!))).toBe(false);
        expect(text(made(shop, 'coaster', lid[0]!))).toBe('changed by hand');
        expect(text(made(shop, 'coaster', 'notes.txt'))).toBe('mine');
    });

    it('also of a recipe that has another name now', async () => {
        const shop = repository();
        await shop.kerfbook(['build', 'plate.kerf']);
        shop.write({ 'plate.kerf': otherRecipe.replace('recipe plate', 'recipe plate-2') });
        expect((await shop.kerfbook(['build', 'plate.kerf'])).err).toContain(
            'made/plate/job-sheet.html is left from an earlier writing',
        );
        await shop.kerfbook(['build', 'plate.kerf', '--clean']);
        expect(readdirSync(made(shop))).toEqual(['plate-2']);
    });
});

it('a dry run says what would be done and does nothing', async () => {
    const shop = repository();
    const { code, out } = await shop.kerfbook(['build', 'coaster.kerf', '--dry-run']);
    expect(code).toBe(0);
    expect(out).toContain('made/coaster/setup-1-disc.ngc  (would be written)');
    expect(existsSync(made(shop))).toBe(false);
    await shop.kerfbook(['build', 'coaster.kerf']);
    expect((await shop.kerfbook(['build', 'coaster.kerf', '--dry-run'])).out).toContain('setup-1-disc.svg  (the same)');
    shop.write({ 'coaster.kerf': coaster.replace('depth 0.5 mm', 'depth 0.6 mm') });
    const again = (await shop.kerfbook(['build', 'coaster.kerf', '--dry-run'])).out;
    expect(again).toContain('made/coaster/setup-1-disc.ngc  (would be written over)');
});
