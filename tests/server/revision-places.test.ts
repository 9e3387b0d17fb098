import { existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { Repository } from '../../server/git/repository';
import { revisionPlaces } from '../../server/git/revision-places';
import type { WatchedPlace } from '../../shared/view/protocol';
import { repository, shopFiles } from './shop-files';

/** What an editor would see in these places: each file that a pattern names, as it is now. */
function seenIn(places: readonly WatchedPlace[]): string {
    return places
        .flatMap(({ folder, pattern }) => {
            const top = fileURLToPath(folder);
            const names = existsSync(top) ? (readdirSync(top, { recursive: pattern === '**' }) as string[]) : [];
            const wanted = /^\{(.*)\}$/.exec(pattern)?.[1]?.split(',');
            return names
                .filter((name) => wanted === undefined || wanted.includes(name))
                .map((name) => path.join(top, name))
                .filter((file) => statSync(file).isFile())
                .map((file) => `${file} ${readFileSync(file, 'utf8')}`);
        })
        .sort()
        .join('\n');
}

async function watcherOf(folder: string): Promise<{ sees: (work: () => void) => boolean }> {
    const places = await revisionPlaces((await Repository.of(folder))!);
    return {
        sees: (work) => {
            const before = seenIn(places);
            work();
            return seenIn(places) !== before;
        },
    };
}

describe('a revision that comes to mean another commit shows in the places that are watched', () => {
    it('after a commit, a checkout, a reset, a tag, a stash, a packing away; not after what changes no revision', async () => {
        const repo = repository();
        const { sees } = await watcherOf(repo.folder);
        const commit = (name: string) => () => {
            repo.write({ 'notes.txt': name });
            repo.commit(name);
        };
        expect(sees(commit('second'))).toBe(true);
        expect(sees(() => repo.git('switch', '--quiet', '--create', 'work'))).toBe(true);
        expect(sees(commit('third'))).toBe(true);
        expect(sees(() => repo.git('pack-refs', '--all'))).toBe(true);
        expect(sees(() => repo.git('reset', '--quiet', '--hard', 'HEAD~1'))).toBe(true);
        expect(sees(() => repo.git('tag', 'v1'))).toBe(true);
        expect(sees(() => repo.git('checkout', '--quiet', '--detach'))).toBe(true);
        expect(sees(commit('on no branch'))).toBe(true);
        repo.write({ 'notes.txt': 'aside' });
        expect(sees(() => repo.git('stash', '--quiet'))).toBe(true);
        repo.write({ 'notes.txt': 'typed' });
        expect(
            sees(() => {
                repo.git('status');
                repo.git('add', '--all');
                repo.git('diff', 'HEAD');
            }),
        ).toBe(false);
    });

    it('in the first commit of a repository', async () => {
        const repo = repository({});
        const { sees } = await watcherOf(repo.folder);
        repo.write(shopFiles);
        expect(sees(() => repo.commit('first'))).toBe(true);
    });

    it('in a work tree of its own, which has its own HEAD and shares the branches', async () => {
        const repo = repository();
        repo.git('worktree', 'add', '--quiet', 'aside', '-b', 'aside');
        const { sees } = await watcherOf(path.join(repo.folder, 'aside'));
        const there = (...args: string[]) => repo.git('-C', 'aside', ...args);
        expect(sees(() => there('commit', '--quiet', '--allow-empty', '--message', 'second'))).toBe(true);
        expect(sees(() => there('checkout', '--quiet', '--detach', 'HEAD~1'))).toBe(true);
        expect(sees(() => there('commit', '--quiet', '--allow-empty', '--message', 'third'))).toBe(true);
    });

    it('in a submodule, whose store lies in that of the repository around it', async () => {
        const inner = repository();
        const outer = repository({ 'readme.txt': '' });
        outer.git('-c', 'protocol.file.allow=always', 'submodule', '--quiet', 'add', inner.folder, 'sub');
        const { sees } = await watcherOf(path.join(outer.folder, 'sub'));
        const there = (...args: string[]) => outer.git('-C', 'sub', ...args);
        expect(sees(() => there('commit', '--quiet', '--allow-empty', '--message', 'second'))).toBe(true);
        expect(sees(() => there('checkout', '--quiet', '--detach', 'HEAD~1'))).toBe(true);
    });

    it('only folders that are there are named', async () => {
        const repo = repository();
        rmSync(path.join(repo.folder, '.git/packed-refs'), { force: true });
        for (const { folder } of await revisionPlaces((await Repository.of(repo.folder))!)) {
            expect(statSync(fileURLToPath(folder)).isDirectory()).toBe(true);
        }
    });
});
