import { randomUUID } from 'node:crypto';
import * as disk from 'node:fs/promises';
import path from 'node:path';
import { phrase } from '../../shared/recipe/phrase';
import { isMissing, lies, realFolder } from '../files/real-folder';
import { CannotWrite, cannotWrite, outside } from './cannot-write';
import type { Found, Store } from './store';

/** What of Node's file system is used; tests give one that fails. */
export type Disk = Pick<typeof disk, 'lstat' | 'mkdir' | 'open' | 'readFile' | 'rename' | 'rm' | 'rmdir' | 'chmod'>;

/** A file that lies ready beside its place. */
interface Staged {
    readonly path: string;
    readonly target: string;
    readonly staged: string;
    /** What it takes the place of; undefined where nothing is. */
    readonly before: Found;
}

const noFile = 'a pipe or a device lies there, and no file. Move or rename it.';

/** A folder on a disk. Its real place must lie in one of the roots, which are real paths themselves. */
export class DiskStore implements Store {
    constructor(
        private readonly folder: string,
        private readonly roots: readonly string[],
        private readonly fs: Disk = disk,
    ) {}

    async look(name: string): Promise<Found> {
        try {
            const target = this.placeOf(await this.realFolder(), name);
            // A link above the file could lead anywhere, so that nothing is read through it either.
            if (!(await this.isInside(path.dirname(target)))) throw outside(this.shown(name));
            const status = await this.fs.lstat(target);
            if (status.isSymbolicLink()) return { kind: 'link' };
            if (status.isDirectory()) return { kind: 'folder' };
            // A pipe would be waited for, until somebody writes into it.
            if (!status.isFile()) throw new CannotWrite(phrase`${this.shown(name)} cannot be written: ${noFile}`);
            return { kind: 'file', bytes: await this.fs.readFile(target) };
        } catch (error) {
            if (isMissing(error)) return { kind: 'missing' };
            throw cannotWrite(this.shown(name), error);
        }
    }

    async replace(files: ReadonlyMap<string, Uint8Array>): Promise<void> {
        const made: string[] = [];
        const staged: Staged[] = [];
        const done: Staged[] = [];
        let current = '.';
        try {
            const real = await this.realFolder();
            for (const [name, bytes] of files) {
                current = name;
                const target = this.placeOf(real, name);
                await this.makeFolder(path.dirname(target), made);
                const before = await this.look(name);
                if (before.kind === 'folder') throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
                const beside = path.join(path.dirname(target), `.${randomUUID()}.part`);
                staged.push({ path: name, target, staged: beside, before });
                await this.stage(beside, bytes, before.kind === 'file' ? await this.modeOf(target) : undefined);
            }
            for (const one of staged) {
                current = one.path;
                await this.fs.rename(one.staged, one.target);
                done.push(one);
            }
            for (const folder of new Set(staged.map(({ target }) => path.dirname(target)))) await this.flushFolder(folder);
        } catch (error) {
            await this.undo(staged, done, made);
            throw cannotWrite(this.shown(current), error);
        }
    }

    async remove(names: readonly string[]): Promise<void> {
        let current = '.';
        try {
            const real = await this.realFolder();
            for (const name of names) {
                current = name;
                if ((await this.look(name)).kind !== 'file') continue;
                await this.fs.rm(this.placeOf(real, name));
                const below = name.split('/').slice(0, -1);
                for (let depth = below.length; depth > 0; depth -= 1)
                    await this.fs.rmdir(path.join(real, ...below.slice(0, depth))).catch(() => {}); // not empty
            }
            await this.fs.rmdir(real).catch(() => {}); // not empty
        } catch (error) {
            throw cannotWrite(this.shown(current), error);
        }
    }

    /** The real path of the folder, there or not. @throws CannotWrite outside of the roots, and in git's own folder */
    private async realFolder(): Promise<string> {
        const real = await realFolder(this.folder);
        const root = this.roots.find((each) => lies(real, each));
        if (root === undefined || path.relative(root, real).split(path.sep).includes('.git')) throw outside(this.shown('.'));
        return real;
    }

    private async isInside(folder: string): Promise<boolean> {
        const real = await realFolder(folder);
        return this.roots.some((root) => lies(real, root));
    }

    private placeOf(real: string, name: string): string {
        return path.join(real, ...name.split('/'));
    }

    /** Folder by folder, so that a link on the way is seen and what was made can be taken away again. */
    private async makeFolder(folder: string, made: string[]): Promise<void> {
        const status = await this.fs.lstat(folder).catch((error: unknown) => {
            if (isMissing(error)) return undefined;
            throw error;
        });
        if (status === undefined) {
            if (path.dirname(folder) !== folder) await this.makeFolder(path.dirname(folder), made);
            await this.fs.mkdir(folder);
            made.push(folder);
        } else if (status.isSymbolicLink()) {
            // The folder's own path has been followed already: this one leads nowhere, or was laid below it.
            throw outside(this.shown(path.relative(await this.realFolder(), folder)));
        } else if (!status.isDirectory()) {
            throw new CannotWrite(
                phrase`${this.shown('.')} cannot be written: ${path.basename(folder)} is a file, and a folder is needed there. Move or rename it.`,
            );
        }
    }

    private async modeOf(target: string): Promise<number> {
        const { mode } = await this.fs.lstat(target);
        // Taking its place would pass over what protects it.
        if ((mode & 0o222) === 0) throw Object.assign(new Error('protected'), { code: 'EACCES' });
        return mode & 0o777;
    }

    /** New under a name of its own, and on the disk before it takes its place. */
    private async stage(file: string, bytes: Uint8Array, mode: number | undefined): Promise<void> {
        const handle = await this.fs.open(file, 'wx');
        try {
            await handle.writeFile(bytes);
            await handle.sync();
        } finally {
            await handle.close();
        }
        if (mode !== undefined) await this.fs.chmod(file, mode);
    }

    /** So that the new names are on the disk too; not every system lets a folder be flushed. */
    private async flushFolder(folder: string): Promise<void> {
        const handle = await this.fs.open(folder, 'r').catch(() => undefined);
        await handle?.sync().catch(() => {});
        await handle?.close().catch(() => {});
    }

    /** As it was before: what has taken its place already gives way to what was there. */
    private async undo(staged: readonly Staged[], done: readonly Staged[], made: readonly string[]): Promise<void> {
        const quietly = (work: Promise<unknown>): Promise<unknown> => work.catch(() => undefined);
        // First, since it makes room.
        for (const { staged: file } of staged) await quietly(this.fs.rm(file, { force: true }));
        for (const { target, staged: file, before } of done) {
            if (before.kind === 'file') {
                await quietly(this.stage(file, before.bytes, undefined).then(() => this.fs.rename(file, target)));
                await quietly(this.fs.rm(file, { force: true }));
            } else {
                await quietly(this.fs.rm(target, { force: true }));
            }
        }
        for (const folder of made.toReversed()) await quietly(this.fs.rmdir(folder));
    }

    /** As a person knows it: from the folder in which the command runs, or from that of the workspace. */
    private shown(name: string): string {
        const full = path.join(this.folder, name);
        const from = [process.cwd(), ...this.roots].find((root) => lies(full, root));
        return from === undefined ? full : path.relative(from, full) || '.';
    }
}
