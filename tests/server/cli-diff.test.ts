import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { shop } from '../kit/shop';
import { TemporaryRepository, temporaryRepository } from '../kit/temporary-repository';
import { bolder, coaster, repository, shopFiles } from './shop-files';

const deeper = coaster.replace('depth 0.5 mm', 'depth 0.6 mm');

describe('kerfbook diff: two files', () => {
    it('says what differs and exits with 0, or with 1 when asked to', async () => {
        const shopFolder = repository();
        shopFolder.write({ 'deeper.kerf': deeper });
        const { code, out } = await shopFolder.kerfbook(['diff', 'coaster.kerf', 'deeper.kerf']);
        expect(out).toContain('coaster: coaster.kerf → deeper.kerf');
        expect(out).toContain('depth: 0.5 mm → 0.6 mm (+0.1 mm)');
        expect(code).toBe(0);
        expect((await shopFolder.kerfbook(['diff', '--exit-code', 'coaster.kerf', 'deeper.kerf'])).code).toBe(1);
        expect((await shopFolder.kerfbook(['diff', '--exit-code', 'coaster.kerf', 'coaster.kerf'])).code).toBe(0);
    });

    it('as JSON for programs', async () => {
        const shopFolder = repository();
        shopFolder.write({ 'deeper.kerf': deeper });
        const { reviews } = JSON.parse(
            (await shopFolder.kerfbook(['diff', '--format', 'json', 'coaster.kerf', 'deeper.kerf'])).out,
        );
        expect(reviews).toHaveLength(1);
        expect(reviews[0]).toMatchObject({ schema: 1, same: false, after: { recipe: 'coaster' } });
    });
});

describe('kerfbook diff: revisions', () => {
    it('a revision against a dirty work tree, which stays as it is', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': deeper, 'notes.txt': 'untracked', 'art/flag.svg': bolder });
        repo.git('add', 'art/flag.svg');
        const before = repo.git('status', '--porcelain');
        const { code, out } = await repo.kerfbook(['diff', 'HEAD', 'coaster.kerf']);
        expect(out).toContain('coaster.kerf at HEAD → coaster.kerf in the work tree');
        expect(out).toContain('depth: 0.5 mm → 0.6 mm (+0.1 mm)');
        expect(out).toContain('flag: 20 mm² changed');
        expect(code).toBe(0);
        expect(repo.git('status', '--porcelain')).toBe(before);
        expect(readFileSync(path.join(repo.folder, 'coaster.kerf'), 'utf8')).toBe(deeper);
    });

    it('two revisions, with the stock and the art of each', async () => {
        const repo = repository();
        repo.write({ 'stock/shop.kerf': shop.replace('thickness 12 mm', 'thickness 11 mm'), 'art/flag.svg': bolder });
        repo.commit('thinner board, bolder flag');
        repo.write({ 'stock/shop.kerf': 'broken {', 'art/flag.svg': 'broken' });
        const { out } = await repo.kerfbook(['diff', 'HEAD~1', 'HEAD', 'coaster.kerf']);
        expect(out).toContain('thickness: 12 ± 0.3 mm → 11 ± 0.3 mm (−1 mm)');
        expect(out).toContain('flag: 20 mm² changed');
        expect(out).not.toContain('unknown-name');
    });

    it('without a file: every recipe that a change reaches, from below and through stock and art', async () => {
        const repo = repository();
        repo.write({ 'art/flag.svg': bolder });
        const reached = async (...args: string[]): Promise<string[]> =>
            [...(await repo.kerfbook(['diff', 'HEAD', ...args])).out.matchAll(/^(\S+): /gm)].map((match) => match[1]!);
        expect(await reached()).toEqual(['coaster']);
        repo.write({ 'stock/shop.kerf': shop.replace('thickness 10 mm', 'thickness 9 mm') });
        expect((await reached()).sort()).toEqual(['coaster', 'plate']);
        repo.git('checkout', '--quiet', '--', '.');
        expect((await repo.kerfbook(['diff', 'HEAD'])).out).toBe('No recipe differs.\n');
    });

    it('a branch since it left another, and not what went on over there', async () => {
        const repo = repository();
        repo.git('switch', '--quiet', '--create', 'work');
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('ours');
        repo.git('switch', '--quiet', 'main');
        repo.write({ 'plate.kerf': shopFiles['plate.kerf'].replace('0.1 mm', '0.2 mm') });
        repo.commit('theirs');
        repo.git('switch', '--quiet', 'work');
        expect((await repo.kerfbook(['diff', 'main'])).out).toContain('plate:');
        const { out } = await repo.kerfbook(['diff', 'main...']);
        expect(out).toContain('coaster.kerf at the fork from main → ');
        expect(out).not.toContain('plate:');
    });

    it('a renamed file is followed', async () => {
        const repo = repository();
        repo.git('config', 'diff.renames', 'false');
        repo.git('mv', 'coaster.kerf', 'round-coaster.kerf');
        repo.write({ 'round-coaster.kerf': deeper });
        repo.commit('renamed');
        for (const name of ['round-coaster.kerf', 'coaster.kerf']) {
            const { out } = await repo.kerfbook(['diff', 'HEAD~1', 'HEAD', name]);
            expect(out).toContain('coaster.kerf at HEAD~1 → round-coaster.kerf at HEAD');
            expect(out).toContain('depth: 0.5 mm → 0.6 mm');
        }
    });

    it('recipes that are new or gone', async () => {
        const repo = repository();
        repo.git('rm', '--quiet', 'plate.kerf');
        repo.write({ 'coaster.kerf': coaster.replace(/recipe coaster/, 'recipe first { }\nrecipe coaster') });
        const { out, code } = await repo.kerfbook(['diff', 'HEAD']);
        expect(out).toContain('first is new');
        expect(out).toContain('plate is gone');
        expect(code).toBe(0);
    });

    it('missing art is a finding on its side', async () => {
        const repo = repository();
        repo.git('rm', '--quiet', 'art/flag.svg');
        repo.commit('no art');
        const { out, code } = await repo.kerfbook(['diff', 'HEAD~1', 'HEAD', 'coaster.kerf']);
        expect(out).toMatch(/\+ error: .*art\/flag\.svg.* \[art-missing\]/);
        expect(code).toBe(0);
    });

    it('links inside the repository are followed in a revision as on disk', async () => {
        const repo = repository({ ...shopFiles, 'coaster.kerf': coaster.replace('art/flag.svg', 'art/link.svg') });
        symlinkSync('flag.svg', path.join(repo.folder, 'art/link.svg'));
        repo.commit('link');
        repo.write({ 'art/flag.svg': bolder });
        const { out } = await repo.kerfbook(['diff', 'HEAD']);
        expect(out).toContain('flag: 20 mm² changed (20 mm² burn now, 0 mm² no longer');
    });

    it('from a folder below, with the path as it is written there', async () => {
        const repo = repository({ ...shopFiles, 'deep/er/x.txt': '' });
        repo.write({ 'coaster.kerf': deeper });
        expect((await repo.kerfbook(['diff', 'HEAD', '../../coaster.kerf'], 'deep/er')).out).toContain('0.5 mm → 0.6 mm');
    });

    it('a shallow clone: what is there is compared, what is not is said', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('deeper');
        const clone = temporaryRepository();
        clone.git('fetch', '--quiet', '--depth', '1', `file://${repo.folder}`, 'main');
        clone.git('checkout', '--quiet', '-B', 'main', 'FETCH_HEAD');
        expect((await clone.kerfbook(['diff', 'HEAD', 'coaster.kerf'])).out).toContain('nothing that matters differs');
        const { code, err } = await clone.kerfbook(['diff', 'HEAD~1', 'coaster.kerf']);
        expect(err).toContain('There is no revision HEAD~1 in this repository. This clone is shallow');
        expect(code).toBe(2);
    });
});

describe('kerfbook diff wherever recipes lie', () => {
    const depth = 'depth: 0.5 mm → 0.6 mm (+0.1 mm)';

    /** Git takes a second to add a submodule, so that one is copied. What it was added from is needed no more. */
    let first: TemporaryRepository;
    beforeAll(() => {
        const inner = new TemporaryRepository(shopFiles);
        first = new TemporaryRepository({ 'readme.txt': '' });
        first.git('-c', 'protocol.file.allow=always', 'submodule', '--quiet', 'add', inner.folder, 'sub');
        first.commit('sub');
        inner.remove();
    });
    afterAll(() => first.remove());

    function withSubmodule(): TemporaryRepository {
        const outer = first.copy();
        onTestFinished(() => outer.remove());
        return outer;
    }

    it('folders and files with spaces and letters of every kind', async () => {
        const inner = Object.fromEntries(Object.entries(shopFiles).map(([name, text]) => [`möwe & werk/${name}`, text]));
        const repo = repository(inner);
        repo.git('mv', 'möwe & werk/coaster.kerf', 'möwe & werk/untersetzer ü.kerf');
        repo.commit('renamed');
        repo.write({ 'möwe & werk/untersetzer ü.kerf': deeper });
        expect((await repo.kerfbook(['diff', 'HEAD', 'untersetzer ü.kerf'], 'möwe & werk')).out).toContain(depth);
        expect((await repo.kerfbook(['diff', 'HEAD~1'], 'möwe & werk')).out).toContain('möwe & werk/coaster.kerf at HEAD~1 → ');
    });

    it('a head that is on no branch', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('deeper');
        repo.git('checkout', '--quiet', '--detach', 'HEAD~1');
        expect((await repo.kerfbook(['diff', 'HEAD', 'main', 'coaster.kerf'])).out).toContain(depth);
        expect((await repo.kerfbook(['diff', 'main...'])).code).toBe(0);
    });

    it('a second work tree', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('deeper');
        repo.git('worktree', 'add', '--quiet', 'second tree', 'HEAD~1');
        const { out } = await repo.kerfbook(['diff', 'main', 'coaster.kerf'], 'second tree');
        expect(out).toContain('coaster.kerf at main → coaster.kerf in the work tree');
        expect(out).toContain('0.6 mm → 0.5 mm');
    });

    it('a submodule, from inside of it and from around it', async () => {
        const outer = withSubmodule();
        outer.write({ 'sub/coaster.kerf': deeper });
        expect((await outer.kerfbook(['diff', 'HEAD', 'sub/coaster.kerf'])).out).toContain(depth);
        expect((await outer.kerfbook(['diff', 'HEAD'], 'sub')).out).toContain(depth);
        const { out } = await outer.kerfbook(['diff', 'HEAD']);
        expect(out).toContain('sub/coaster.kerf at HEAD → sub/coaster.kerf in the work tree');
        expect(out).toContain(depth);
        expect(out).not.toContain('plate:');
    });

    it('a submodule that stands at another commit, that is new, or gone', async () => {
        const outer = withSubmodule();
        outer.write({ 'sub/coaster.kerf': deeper });
        outer.git('-C', 'sub', 'commit', '--quiet', '--all', '--message', 'deeper');
        outer.commit('sub, deeper');
        expect((await outer.kerfbook(['diff', 'HEAD'])).out).toBe('No recipe differs.\n');
        const trace = path.join(outer.folder, '.git', 'trace');
        vi.stubEnv('GIT_TRACE', trace);
        const { out, err } = await outer.kerfbook(['diff', 'HEAD~1', 'HEAD']);
        vi.unstubAllEnvs();
        // Not one for each file on each side.
        expect(readFileSync(trace, 'utf8').match(/built-in: git/g)!.length).toBeLessThanOrEqual(12);
        expect(out).toContain('sub/coaster.kerf at HEAD~1 → sub/coaster.kerf at HEAD');
        expect(out).toContain(depth);
        expect(out).not.toContain('plate:');
        expect(err).toBe('');
        expect((await outer.kerfbook(['diff', 'HEAD~2', 'HEAD'])).out).toMatch(/coaster is new.*plate is new/s);
        expect((await outer.kerfbook(['diff', 'HEAD', 'HEAD~2'])).out).toMatch(/coaster is gone.*plate is gone/s);
    });

    it('stock that lies in a submodule reaches the recipes around it, on either side as it was', async () => {
        const outer = withSubmodule();
        outer.write({
            'bench/saucer.kerf': coaster.replace('stock/shop.kerf', '../sub/stock/shop.kerf').replace('art/', '../sub/art/'),
        });
        outer.commit('saucer');
        expect((await outer.kerfbook(['diff', 'HEAD', 'bench/saucer.kerf'])).out).toContain('nothing that matters differs');
        outer.write({ 'sub/art/flag.svg': bolder });
        const { out } = await outer.kerfbook(['diff', 'HEAD'], 'bench');
        expect(out).toContain('flag: 20 mm² changed');
        expect((await outer.kerfbook(['check', '--since', 'HEAD', '--format', 'json'])).out).toContain('bench/saucer.kerf');
        outer.git('-C', 'sub', 'commit', '--quiet', '--all', '--message', 'bolder');
        outer.commit('bolder');
        expect((await outer.kerfbook(['diff', 'HEAD~1', 'HEAD', 'bench/saucer.kerf'])).out).toContain('flag: 20 mm² changed');
    });

    it('a submodule that is not checked out is left out, which is said where it has changed', async () => {
        const outer = withSubmodule();
        const before = outer.git('rev-parse', 'HEAD').trim();
        outer.git('-C', 'sub', 'commit', '--quiet', '--allow-empty', '--message', 'more');
        outer.commit('sub, further on');
        outer.write({ 'readme.txt': 'more' });
        outer.commit('more');
        outer.git('submodule', '--quiet', 'deinit', '--force', 'sub');
        const { out, err, code } = await outer.kerfbook(['diff', before]);
        expect(err).toBe('What changed in the submodule sub is left out: it is not checked out here, or lacks the commit.\n');
        expect(out).toBe('No recipe differs.\n');
        expect(code).toBe(0);
        expect((await outer.kerfbook(['diff', 'HEAD~1'])).err).toBe('');
    });

    it('a link in the place of a submodule leads nowhere', async () => {
        const [outer, inner] = [withSubmodule(), repository()];
        rmSync(path.join(outer.folder, 'sub'), { recursive: true });
        symlinkSync(inner.folder, path.join(outer.folder, 'sub'));
        inner.write({ 'coaster.kerf': deeper });
        expect((await outer.kerfbook(['diff', 'HEAD'])).out).not.toContain(depth);
    });

    it('other ends of lines are no change', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': coaster.replaceAll('\n', '\r\n') });
        expect((await repo.kerfbook(['diff', '--exit-code', 'HEAD'])).code).toBe(0);
    });

    it('a repository without a work tree holds nothing to compare', async () => {
        const repo = repository();
        repo.git('clone', '--quiet', '--bare', repo.folder, 'bare one.git');
        const { code, err } = await repo.kerfbook(['diff', 'HEAD', 'HEAD'], 'bare one.git');
        expect(err).toContain('is not in a git repository with a work tree');
        expect(code).toBe(2);
    });
});

describe('kerfbook diff in a clone that holds only a part', () => {
    it('says so and fetches nothing', async () => {
        const repo = repository();
        repo.git('config', 'uploadpack.allowFilter', 'true');
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('deeper');
        const clone = temporaryRepository();
        clone.git('clone', '--quiet', '--filter=blob:none', `file://${repo.folder}`, 'part');
        const missing = (): string => clone.git('-C', 'part', 'rev-list', '--objects', '--all', '--missing=print');
        const before = missing();
        const { code, err } = await clone.kerfbook(['diff', 'HEAD~1', 'HEAD', 'coaster.kerf'], 'part');
        expect(err).toMatch(/cannot be read as a recipe file\. Is HEAD~1 in this clone as a whole\?|^git: /);
        expect(code).toBe(2);
        expect(before).toContain('?');
        expect(missing()).toBe(before);
    });
});

describe('kerfbook diff: what it refuses', () => {
    it.each([
        [['diff', 'nowhere', 'coaster.kerf'], 'There is no revision nowhere'],
        [['diff', '--', '--output=owned', 'coaster.kerf'], 'is no revision'],
        [['diff', '--', '-O/etc/passwd', 'HEAD', 'coaster.kerf'], 'is no revision'],
        [['diff', 'HEAD:coaster.kerf', 'coaster.kerf'], 'There is no file HEAD:coaster.kerf'],
        [['diff', 'a', 'b', 'c', 'coaster.kerf'], 'Compare one revision'],
        [['diff', 'coaster.kerf'], 'Say what to compare'],
        [['diff', 'HEAD', 'coaster.kerf', '../outside.kerf'], 'lies outside the repository'],
        [['diff', 'coaster.kerf', 'nothing-here.kerf'], 'There is no file nothing-here.kerf'],
        [['diff', '--format', 'pdf', 'HEAD'], '--format is one of'],
        [['diff', '--recipe', 'nobody', 'HEAD', 'coaster.kerf'], 'There is no recipe nobody'],
    ])('%j', async (args, message) => {
        const repo = repository();
        const { code, out, err } = await repo.kerfbook(args);
        expect(err).toContain(message);
        expect(out).toBe('');
        expect(code).toBe(2);
        expect(existsSync(path.join(repo.folder, 'owned'))).toBe(false);
    });

    it('a folder without a repository', async () => {
        const repo = repository();
        rmSync(path.join(repo.folder, '.git'), { recursive: true });
        const { code, err } = await repo.kerfbook(['diff', 'HEAD', 'coaster.kerf']);
        expect(err).toContain('is not in a git repository');
        expect(code).toBe(2);
    });

    it('to read outside of the repository: by a path, by a link, at either side', async () => {
        const outside = mkdtempSync(path.join(tmpdir(), 'kerfbook-outside-'));
        try {
            writeFileSync(path.join(outside, 'secret.svg'), bolder);
            writeFileSync(path.join(outside, 'secret.kerf'), shop);
            const repo = repository({ 'readme.txt': '' });
            symlinkSync(path.join(outside, 'secret.svg'), path.join(repo.folder, 'link.svg'));
            symlinkSync(path.join(outside, 'secret.kerf'), path.join(repo.folder, 'link.kerf'));
            const up = path.relative(repo.folder, outside);
            const reading = (art: string, stock: string): string =>
                coaster.replace('art/flag.svg', art).replace('stock/shop.kerf', stock);
            repo.write({
                'by-link.kerf': reading('link.svg', 'link.kerf'),
                'by-path.kerf': reading(`${up}/secret.svg`, `${up}/secret.kerf`),
            });
            repo.commit('links');
            repo.write({ 'readme.txt': 'dirty' });
            for (const file of ['by-link.kerf', 'by-path.kerf']) {
                const { out } = await repo.kerfbook(['diff', '--format', 'json', 'HEAD', file]);
                const [review] = JSON.parse(out).reviews;
                expect(review.same).toBe(true);
                expect(review.findingsKept).toBeGreaterThan(1);
                expect(JSON.stringify(review)).not.toContain('page width');
                expect(JSON.stringify(review.steps)).not.toContain('"area"');
            }
        } finally {
            rmSync(outside, { recursive: true, force: true });
        }
    });

    it('to start what the settings of a hostile repository name', async () => {
        const repo = repository();
        const flagFile = path.join(repo.folder, 'started');
        for (const key of [
            'core.fsmonitor',
            'diff.external',
            'diff.kerf.command',
            'diff.kerf.textconv',
            'core.pager',
            'filter.kerf.clean',
            'filter.kerf.process',
            'filter.a=b.clean',
        ]) {
            repo.git('config', key, `touch ${flagFile} #`);
        }
        repo.git('config', 'filter.kerf.required', 'true');
        const attributes = '*.kerf diff=kerf filter=kerf\n*.svg filter=a=b\n';
        repo.write({ '.gitattributes': attributes, 'coaster.kerf': deeper, 'art/flag.svg': bolder });
        expect((await repo.kerfbook(['diff', 'HEAD'])).out).toContain('0.5 mm → 0.6 mm');
        expect((await repo.kerfbook(['check', '--since', 'HEAD'])).code).toBe(0);
        expect(existsSync(flagFile)).toBe(false);
    });
});

describe('kerfbook diff inside git', () => {
    it('as a difftool: copies in temporary folders are read as if they lay where they come from', async () => {
        const repo = repository();
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('deeper');
        repo.git('config', 'difftool.kerfbook.cmd', `${repo.command} diff "$LOCAL" "$REMOTE" --as "$MERGED"`);
        const out = repo.git('difftool', '--no-prompt', '--tool', 'kerfbook', 'HEAD~1', 'HEAD');
        expect(out).toContain('depth: 0.5 mm → 0.6 mm (+0.1 mm)');
        expect(out).toContain('machine:');
        expect(out).not.toContain('unknown-name');
        expect(out).toContain('coaster: coaster.kerf before → coaster.kerf after');
    });

    it('called by a hook, whose variables name another repository', async () => {
        const repo = repository();
        const other = repository({ 'x.txt': '' });
        repo.write({ 'coaster.kerf': deeper });
        vi.stubEnv('GIT_DIR', path.join(other.folder, '.git'));
        vi.stubEnv('GIT_WORK_TREE', other.folder);
        try {
            expect((await repo.kerfbook(['diff', 'HEAD', 'coaster.kerf'])).out).toContain('0.5 mm → 0.6 mm');
        } finally {
            vi.unstubAllEnvs();
        }
    });
});
