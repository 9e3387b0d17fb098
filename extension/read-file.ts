import * as vscode from 'vscode';
import { toBase64 } from '../shared/quantity/base64';
import type { ListAnswer, ReadAnswer } from '../shared/view/protocol';

/** Larger art is refused before it is read: no drawing of a piece needs more, and forged sizes must not fill the memory. */
const LARGEST = 32 * 1024 * 1024; // bytes

/** Reads a file for the server, which itself never touches one. Only what lies with the recipes is read. */
export async function readForServer({ uri: address }: { readonly uri: string }): Promise<ReadAnswer> {
    // Joining normalises, so that no `..` can lead out of a folder it seems to lie in.
    const uri = vscode.Uri.joinPath(vscode.Uri.parse(address, true), '.');
    if (!liesWithRecipes(uri)) return { problem: 'outside' };
    try {
        const { size, type } = await vscode.workspace.fs.stat(uri);
        if ((type & vscode.FileType.File) === 0) return { problem: 'unreadable' };
        if (size > LARGEST) return { problem: 'too-large' };
        return { base64: toBase64(await vscode.workspace.fs.readFile(uri)) };
    } catch (error) {
        return { problem: error instanceof vscode.FileSystemError && error.code === 'FileNotFound' ? 'missing' : 'unreadable' };
    }
}

/** What lies in a folder of the workspace, for a server that sees no disk. */
export async function listForServer({ uri: address }: { readonly uri: string }): Promise<ListAnswer> {
    const uri = vscode.Uri.joinPath(vscode.Uri.parse(address, true), '.');
    if (vscode.workspace.getWorkspaceFolder(uri) === undefined) return { entries: [] };
    try {
        const found = await vscode.workspace.fs.readDirectory(uri);
        return {
            entries: found.flatMap(([name, type]): ListAnswer['entries'] => {
                if (type === vscode.FileType.File) return [{ name, kind: 'file' }];
                return type === vscode.FileType.Directory ? [{ name, kind: 'folder' }] : [];
            }),
        };
    } catch {
        return { entries: [] };
    }
}

/** Inside a workspace folder, or, when a recipe was opened on its own, beside it or below. */
function liesWithRecipes(uri: vscode.Uri): boolean {
    if (vscode.workspace.getWorkspaceFolder(uri) !== undefined) return true;
    return vscode.workspace.textDocuments.some(
        (document) =>
            document.languageId === 'kerfbook' &&
            vscode.workspace.getWorkspaceFolder(document.uri) === undefined &&
            document.uri.scheme === uri.scheme &&
            document.uri.authority === uri.authority &&
            uri.path.startsWith(vscode.Uri.joinPath(document.uri, '..').path.replace(/\/?$/, '/')),
    );
}
