import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { coaster, otherRecipe, repository, shopFiles } from './shop-files';

/** Twice as deep as the board is thick: an error. */
const through = coaster.replace('depth 0.5 mm', 'depth 24 mm');
/** A warning that was there before anybody looked. */
const airOn = coaster.replace('air off', 'air on');
/** And one more. */
const coarse = airOn.replace('depth 0.5 mm', 'depth 0.5 mm pitch 1 mm');

const rulesIn = (out: string): string[] =>
    [...out.matchAll(/: (?:error|warning): .* \[([a-z-]+)\]$/gm)].map((match) => match[1]!);

describe('kerfbook check --gained', () => {
    it('tells what the change brought and goes by that', async () => {
        const repo = repository({ ...shopFiles, 'coaster.kerf': airOn });
        repo.write({ 'coaster.kerf': `${airOn}// a comment\n` });
        const before = await repo.kerfbook(['check', '--since', 'HEAD', '--strict']);
        expect(rulesIn(before.out)).toContain('air-while-engraving');
        expect(before.code).toBe(1);
        expect(await repo.kerfbook(['check', '--since', 'HEAD', '--strict', '--gained'])).toMatchObject({ code: 0 });
        repo.write({ 'coaster.kerf': coarse });
        const { out, code } = await repo.kerfbook(['check', '--since', 'HEAD', '--strict', '--gained']);
        expect(rulesIn(out)).toContain('coarse-pitch');
        expect(rulesIn(out)).not.toContain('air-while-engraving');
        expect(code).toBe(1);
    });

    it('a finding that says another number is the same, one that is graver is not; files are followed to their new names', async () => {
        const clearance = 'depth 12.1 mm';
        const repo = repository({ ...shopFiles, 'coaster.kerf': coaster.replace('depth 0.5 mm', clearance) });
        repo.git('mv', 'coaster.kerf', 'round.kerf');
        repo.write({ 'round.kerf': coaster.replace('depth 0.5 mm', 'depth 12.2 mm') });
        repo.git('add', '--all');
        const { out, code } = await repo.kerfbook(['check', '--since', 'HEAD', '--gained']);
        expect(rulesIn(out)).not.toContain('deeper-than-blank');
        expect(code).toBe(0);
        repo.commit('renamed');
        repo.write({ 'round.kerf': airOn });
        repo.commit('air');
        repo.write({ 'round.kerf': through });
        const graver = await repo.kerfbook(['check', '--since', 'HEAD', '--gained']);
        expect(rulesIn(graver.out)).toContain('deeper-than-blank');
        expect(graver.code).toBe(1);
    });

    it('a change of the stock counts in every recipe that it reaches', async () => {
        const repo = repository();
        const shop = readFileSync(path.join(repo.folder, 'stock/shop.kerf'), 'utf8');
        repo.write({ 'stock/shop.kerf': shop.replace('thickness 12 mm +- 0.3 mm', 'thickness 0.4 mm') });
        const { out, code } = await repo.kerfbook(['check', '--since', 'HEAD', '--gained']);
        expect(out).toMatch(/^coaster\.kerf:.*\[deeper-than-blank\]$/m);
        expect(code).toBe(1);
    });

    it('needs something to set it against', async () => {
        const { err, code } = await repository().kerfbook(['check', '--gained']);
        expect(err).toContain('--gained needs --since REVISION, or --staged.');
        expect(code).toBe(2);
    });
});

describe('kerfbook check --staged', () => {
    it('looks at the index: a mistake that was mended in the work tree alone still fails, one that is not staged does not', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': through });
        repo.git('add', 'coaster.kerf');
        repo.write({ 'coaster.kerf': coaster });
        const staged = await repo.kerfbook(['check', '--staged', '--gained']);
        expect(rulesIn(staged.out)).toContain('deeper-than-blank');
        expect(staged.code).toBe(1);
        expect((await repo.kerfbook(['check', '--since', 'HEAD', '--gained'])).code).toBe(0);
        repo.git('reset', '--quiet');
        repo.write({ 'coaster.kerf': through, 'notes.txt': 'x' });
        repo.git('add', 'notes.txt');
        expect((await repo.kerfbook(['check', '--staged'])).code).toBe(0);
    });

    it('with stock and art as they are staged, from a folder below, and before the first commit', async () => {
        const repo = repository();
        const shop = readFileSync(path.join(repo.folder, 'stock/shop.kerf'), 'utf8');
        repo.write({
            'stock/shop.kerf': shop.replace('thickness 12 mm +- 0.3 mm', 'thickness 0.4 mm'),
            'below/plate.kerf': otherRecipe,
        });
        repo.git('add', 'stock/shop.kerf');
        repo.write({ 'stock/shop.kerf': 'broken {' });
        expect(rulesIn((await repo.kerfbook(['check', '--staged', '--gained'])).out)).toContain('deeper-than-blank');
        expect((await repo.kerfbook(['check', '--staged', '--gained'], 'below')).code).toBe(0);
        repo.git('update-ref', '-d', 'HEAD');
        const first = await repo.kerfbook(['check', '--staged', '--gained']);
        expect(rulesIn(first.out)).toContain('deeper-than-blank');
    });
});

describe('the hook that the page on reviewing gives', () => {
    const doc = readFileSync(new URL('../../extension/docs/review.md', import.meta.url), 'utf8');
    const hook = /```sh\n(#!\/bin\/sh\n[\s\S]*?)```/.exec(doc)![1]!;

    it('stops a commit that brings an error, also one of only some files, and lets others through', () => {
        const repo = repository();
        const file = path.join(repo.folder, '.git/hooks/pre-commit');
        writeFileSync(file, hook.replaceAll('npx kerfbook', repo.command), { mode: 0o755 });
        repo.write({ 'coaster.kerf': through });
        expect(() => repo.git('commit', '--all', '--quiet', '--message', 'deep')).toThrow(/deeper-than-blank/);
        expect(() => repo.git('commit', '--quiet', '--message', 'deep', 'coaster.kerf')).toThrow(/deeper-than-blank/);
        repo.write({ 'plate.kerf': otherRecipe.replace('take 0.1 mm', 'take 0.2 mm') });
        repo.git('commit', '--quiet', '--message', 'plate', 'plate.kerf');
        expect(repo.git('log', '-1', '--format=%s').trim()).toBe('plate');
        expect(repo.git('status', '--porcelain').trim()).toBe('M coaster.kerf');
    });
});

describe('kerfbook check --fail-on and --allow', () => {
    it('severities and rules that fail, and rules that do not', async () => {
        const repo = repository({ ...shopFiles, 'coaster.kerf': airOn });
        const codeOf = async (...args: string[]): Promise<number> => (await repo.kerfbook(['check', ...args])).code;
        expect(await codeOf()).toBe(0);
        expect(await codeOf('--fail-on', 'air-while-engraving')).toBe(1);
        expect(await codeOf('--fail-on', 'error,warning')).toBe(1);
        expect(await codeOf('--fail-on', 'coarse-pitch')).toBe(0);
        const { out } = await repo.kerfbook(['check', '--strict', '--format', 'junit', '--allow', 'air-while-engraving']);
        expect(out).not.toContain('<failure type="air-while-engraving"');
        repo.write({ 'coaster.kerf': through });
        expect(await codeOf()).toBe(1);
        expect(await codeOf('--allow', 'deeper-than-blank,depth-unreachable,too-deep-to-touch')).toBe(0);
    });

    it('words that there are not', async () => {
        const repo = repository();
        const { err, code } = await repo.kerfbook(['check', '--fail-on', 'eror']);
        expect(err).toContain('--fail-on: there is no severity or rule "eror". Do you mean error?');
        expect(code).toBe(2);
        expect((await repo.kerfbook(['check', '--allow', 'warning'])).err).toContain('there is no rule "warning"');
    });
});

describe('kerfbook check: one cause in many files', () => {
    it('is told at the first, with the places of the others', async () => {
        const names = ['a', 'b', 'c', 'd'].map((letter) => `${letter}.kerf`);
        const text = (letter: string): string => airOn.replace('recipe coaster', `recipe ${letter}`);
        const repo = repository({ ...shopFiles, ...Object.fromEntries(names.map((name) => [name, text(name[0]!)])) });
        const { out } = await repo.kerfbook(['check']);
        expect(out.match(/\[air-while-engraving\]/g)).toHaveLength(1);
        expect(out).toMatch(/^ {4}the same cause: 3 more findings in 3 other files: b\.kerf:\d+, c\.kerf:\d+, d\.kerf:\d+$/m);
        const two = await repo.kerfbook(['check', 'a.kerf', 'b.kerf']);
        expect(two.out.match(/\[air-while-engraving\]/g)).toHaveLength(2);
    });
});
