import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { URI } from 'langium';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { diskReader } from '../../server/files/disk-reader';
import { guardedFileSystem } from '../../server/files/guarded-file-system';
import { WorkspaceFiles } from '../../server/files/workspace-files';

let home: string;
const files = new WorkspaceFiles();
const uriOf = (...names: string[]) => pathToFileURL(path.join(home, ...names)).toString();

beforeAll(async () => {
    home = await mkdtemp(path.join(tmpdir(), 'kerfbook-'));
    await mkdir(path.join(home, 'shop', 'art'), { recursive: true });
    await mkdir(path.join(home, 'shop-next-door'));
    await writeFile(path.join(home, 'shop', 'art', 'heron.svg'), '<svg/>');
    await writeFile(path.join(home, 'shop', 'tray.kerf'), 'recipe tray {}');
    await writeFile(path.join(home, 'secret.svg'), '<svg/>');
    await writeFile(path.join(home, 'shop-next-door', 'theirs.svg'), '<svg/>');
    await symlink(path.join(home, 'secret.svg'), path.join(home, 'shop', 'art', 'link.svg'));
    await symlink(home, path.join(home, 'shop', 'up'));
    await files.setRoots([path.join(home, 'shop')]);
});
afterAll(() => rm(home, { recursive: true, force: true }));

describe('only what lies in the workspace is read', () => {
    const read = diskReader(files);
    it('reads art beside the recipe', async () => {
        expect(await read(uriOf('shop', 'art', 'heron.svg'))).toMatchObject({ bytes: expect.any(Uint8Array) });
    });
    it.each([
        ['a parent folder', ['shop', '..', 'secret.svg']],
        ['a folder whose name begins the same', ['shop-next-door', 'theirs.svg']],
        ['a link to a file outside', ['shop', 'art', 'link.svg']],
        ['a linked folder that leads outside', ['shop', 'up', 'secret.svg']],
        ['what is missing outside', ['nothing.svg']],
    ])('refuses %s', async (_what, names) => {
        expect(await read(uriOf(...names))).toMatchObject({ problem: 'outside' });
    });
    it('says what is missing inside', async () => {
        expect(await read(uriOf('shop', 'art', 'gone.svg'))).toMatchObject({ problem: 'missing' });
    });
    it('refuses addresses', async () => {
        expect(await read('https://example.org/heron.svg')).toMatchObject({ problem: 'outside' });
        expect(await read('data:image/svg+xml,<svg/>')).toMatchObject({ problem: 'outside' });
    });
    it('a folder is not art', async () => {
        expect(await read(uriOf('shop', 'art'))).toMatchObject({ problem: 'unreadable' });
    });
    it.skipIf(process.platform === 'win32')('a pipe that nobody writes to is not art, and not waited for', async () => {
        execFileSync('mkfifo', [path.join(home, 'shop', 'art', 'pipe.svg')]);
        expect(await read(uriOf('shop', 'art', 'pipe.svg'))).toMatchObject({ problem: 'unreadable' });
    });
});

describe('the file system that the language sees', () => {
    const system = guardedFileSystem(files).fileSystemProvider();
    it('reads recipes inside and refuses them outside', async () => {
        expect(await system.readFile(URI.parse(uriOf('shop', 'tray.kerf')))).toBe('recipe tray {}');
        await expect(system.readFile(URI.parse(uriOf('secret.svg')))).rejects.toThrow('outside');
    });
});

describe('the folders of the workspace', () => {
    const provider = guardedFileSystem(files).fileSystemProvider();
    const readDirectory = (uri: URI) => provider.readDirectory(uri);
    it('are listed from the root on, which holds recipes that nobody has opened', async () => {
        const names = (await readDirectory(URI.parse(uriOf('shop')))).map(({ uri }) => path.basename(uri.path));
        expect(names).toEqual(expect.arrayContaining(['art', 'tray.kerf']));
    });
    it('are the only ones', async () => {
        expect(await readDirectory(URI.parse(uriOf()))).toEqual([]);
        expect(await readDirectory(URI.parse(uriOf('shop', '..')))).toEqual([]);
        expect(await readDirectory(URI.parse(uriOf('shop', 'up')))).toEqual([]);
    });
});
