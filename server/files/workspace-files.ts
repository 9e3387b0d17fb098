import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Which files on disk may be read: what lies in one of the roots once links have been followed.
 * Recipes come from strangers, so a path or a link that leads elsewhere is refused.
 */
export class WorkspaceFiles {
    private roots: string[] = [];

    /** Folders as paths; the real places behind links. */
    async setRoots(folders: readonly string[]): Promise<void> {
        const real = await Promise.all(folders.map((folder) => realpath(folder).catch(() => path.resolve(folder))));
        this.roots = [...new Set(real)];
    }

    async addRoot(folder: string): Promise<void> {
        await this.setRoots([...this.roots, folder]);
    }

    /** The real path of a file inside the roots; why not, otherwise. */
    async resolve(uri: string): Promise<{ readonly path: string } | { readonly problem: 'missing' | 'outside' | 'unreadable' }> {
        let file: string;
        try {
            file = path.resolve(fileURLToPath(uri));
        } catch {
            return { problem: 'outside' };
        }
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
        return this.roots.includes(await realpath(file).catch(() => ''));
    }

    private holds(file: string): boolean {
        return this.roots.some((root) => {
            const relative = path.relative(root, file);
            return relative === '' || (!relative.startsWith(`..${path.sep}`) && relative !== '..' && !path.isAbsolute(relative));
        });
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

export function isMissing(error: unknown): boolean {
    return error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR');
}
