import * as vscode from 'vscode';
import { fromBase64, toBase64 } from '../../shared/quantity/base64';
import { safePath } from '../../shared/sheets/safe-path';
import type { LookAnswer, PathParams, PutParams, RemoveParams } from '../../shared/view/protocol';
import { whyNotWritten } from './why-not-written';

// A server without a disk of its own has files looked at and written here. Only a trusted workspace's folders are written to.

/** What lies at a path. */
export async function lookForServer({ folder, path }: PathParams): Promise<LookAnswer> {
    const target = placeIn(folder, path);
    if (typeof target === 'string') return { problem: target };
    try {
        const { type } = await vscode.workspace.fs.stat(target);
        if ((type & vscode.FileType.SymbolicLink) !== 0) return { kind: 'link' };
        if ((type & vscode.FileType.Directory) !== 0) return { kind: 'folder' };
        return { kind: 'file', base64: toBase64(await vscode.workspace.fs.readFile(target)) };
    } catch (error) {
        return isMissing(error) ? { kind: 'missing' } : { problem: whyNotWritten(path, error) };
    }
}

/** Puts all files there or none: each is written beside its place first, and only when all lie ready do they take it. */
export async function putForServer({ folder, files }: PutParams): Promise<string | null> {
    const staged: { readonly from: vscode.Uri; readonly to: vscode.Uri; readonly path: string }[] = [];
    const fresh: vscode.Uri[] = [];
    let current = '';
    try {
        for (const { path, base64 } of files) {
            current = path;
            const to = placeIn(folder, path);
            if (typeof to === 'string') throw new Error(to);
            if (await isLink(vscode.Uri.joinPath(to, '..')))
                return vscode.l10n.t('{0} cannot be written: its folder is a link. Put a folder in its place.', path);
            const from = vscode.Uri.joinPath(to, '..', `.${crypto.randomUUID()}.part`);
            staged.push({ from, to, path });
            await vscode.workspace.fs.writeFile(from, fromBase64(base64));
        }
        for (const { from, to, path } of staged) {
            current = path;
            if (!(await exists(to))) fresh.push(to);
            await vscode.workspace.fs.rename(from, to, { overwrite: true });
        }
        return null;
    } catch (error) {
        for (const uri of [...staged.map(({ from }) => from), ...fresh])
            await vscode.workspace.fs.delete(uri).then(undefined, () => {});
        return whyNotWritten(current, error);
    }
}

export async function removeForServer({ folder, paths }: RemoveParams): Promise<string | null> {
    for (const path of paths) {
        const target = placeIn(folder, path);
        if (typeof target === 'string') return target;
        try {
            await vscode.workspace.fs.delete(target);
        } catch (error) {
            if (!isMissing(error)) return whyNotWritten(path, error);
        }
    }
    return null;
}

/** The address of a path in a folder of the workspace; why there is none, otherwise. */
function placeIn(folder: string, path: string): vscode.Uri | string {
    const names = safePath(path);
    if (names === undefined) return vscode.l10n.t('“{0}” cannot be the name of a file.', path);
    // Joining normalises, so that no `..` can lead out of a folder it seems to lie in.
    const target = vscode.Uri.joinPath(vscode.Uri.parse(folder, true), ...names);
    if (!vscode.workspace.isTrusted)
        return vscode.l10n.t('{0} cannot be written: this workspace is not trusted. Trust it first.', path);
    if (vscode.workspace.getWorkspaceFolder(target) === undefined || target.path.split('/').includes('.git'))
        return vscode.l10n.t(
            '{0} cannot be written: it would lie outside the workspace. Open the folder that is to hold it.',
            path,
        );
    return target;
}

async function isLink(uri: vscode.Uri): Promise<boolean> {
    try {
        return ((await vscode.workspace.fs.stat(uri)).type & vscode.FileType.SymbolicLink) !== 0;
    } catch {
        return false; // it is not there yet
    }
}

/** Whether anything is there. */
export async function exists(uri: vscode.Uri): Promise<boolean> {
    return Promise.resolve(vscode.workspace.fs.stat(uri)).then(
        () => true,
        () => false,
    );
}

function isMissing(error: unknown): boolean {
    return error instanceof vscode.FileSystemError && error.code === 'FileNotFound';
}
