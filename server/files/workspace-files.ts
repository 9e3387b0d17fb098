import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { isMissing, lies } from './real-folder';

/**
 * Which files on disk may be read, and in which folders files may be written: what lies in one of the roots once links have been followed.
 * Recipes come from strangers, so a path or a link that leads elsewhere is refused.
 */
export class WorkspaceFiles {
    private roots: string[] = [];
    /** Folders of files that were opened on their own: read, never written to. */
    private besides: string[] = [];
    /** Whoever asks meanwhile waits until it is known which folders there are. */
    private changing: Promise<void> = Promise.resolve();

    /** Folders as paths; the real places behind links. */
    setRoots(folders: readonly string[]): Promise<void> {
        return this.change(async () => {
            this.roots = await Promise.all(folders.map(realOf));
            this.besides = [];
        });
    }

    /** A file that was opened on its own may read what lies beside it. */
    admit(uri: string): Promise<void> {
        return this.change(async () => {
            const file = pathOf(uri);
            if (file !== undefined && 'problem' in (await this.find(uri))) this.besides.push(await realOf(path.dirname(file)));
        });
    }

    private change(work: () => Promise<void>): Promise<void> {
        this.changing = this.changing.then(work);
        return this.changing;
    }

    /** The real path of a file inside the roots; why not, otherwise. */
    async resolve(uri: string): Promise<Found> {
        await this.changing;
        return this.find(uri);
    }

    private async find(uri: string): Promise<Found> {
        const file = pathOf(uri);
        if (file === undefined) return { problem: 'outside' };
        if (!this.holds(await realParent(file)) && !(await this.isRoot(file))) return { problem: 'outside' };
        try {
            const real = await realpath(file);
            return this.holds(real) ? { path: real } : { problem: 'outside' };
        } catch (error) {
            return { problem: isMissing(error) ? 'missing' : 'unreadable' };
        }
    }

    /** A root itself may be looked into, though the folder around it may not. */
    private async isRoot(file: string): Promise<boolean> {
        return [...this.roots, ...this.besides].includes(await realpath(file).catch(() => ''));
    }

    /** The real places of the folders that may be written to. */
    get folders(): readonly string[] {
        return this.roots;
    }

    private holds(file: string): boolean {
        return [...this.roots, ...this.besides].some((root) => lies(file, root));
    }
}

type Found = { readonly path: string } | { readonly problem: 'missing' | 'outside' | 'unreadable' };

function realOf(folder: string): Promise<string> {
    return realpath(folder).catch(() => path.resolve(folder));
}

function pathOf(uri: string): string | undefined {
    try {
        return path.resolve(fileURLToPath(uri));
    } catch {
        return undefined;
    }
}

/** The real path of the nearest folder above that exists, so that a missing file outside is not told apart from one inside by its absence. */
async function realParent(file: string): Promise<string> {
    for (let folder = path.dirname(file); ; folder = path.dirname(folder)) {
        try {
            return await realpath(folder);
        } catch {
            if (folder === path.dirname(folder)) return folder;
        }
    }
}
