import * as vscode from 'vscode';

export const artMimes = ['image/svg+xml', 'image/png', 'image/jpeg'];
const artEnding = /\.(svg|png|jpe?g)$/i;
const endingOf: Readonly<Record<string, string>> = { 'image/svg+xml': 'svg', 'image/png': 'png', 'image/jpeg': 'jpg' };

/** Art that is brought into a recipe: a file that lies with the recipes, or bytes that have to be put there. */
export type BroughtArt = { readonly uri: vscode.Uri } | { readonly name: string; readonly bytes: () => Thenable<Uint8Array> };

/** The drawings and pictures among what is dropped or pasted; empty when there is anything else, which is not ours then. */
export async function broughtArt(data: vscode.DataTransfer): Promise<BroughtArt[]> {
    const list = await data.get('text/uri-list')?.asString();
    const uris = (list ?? '')
        .split(/\r?\n/)
        .filter((line) => line.trim() !== '' && !line.startsWith('#'))
        .map(parsed);
    if (uris.length > 0) {
        const art = uris.filter((uri) => uri !== undefined && artEnding.test(uri.path)) as vscode.Uri[];
        return art.length < uris.length ? [] : art.map(brought);
    }
    const files: BroughtArt[] = [];
    for (const [mime, item] of data) {
        const file = item.asFile();
        const ending = endingOf[mime];
        if (file === undefined) continue;
        if (ending === undefined) return [];
        files.push({ name: artEnding.test(file.name) ? file.name : `pasted.${ending}`, bytes: () => file.data() });
    }
    return files;
}

function parsed(line: string): vscode.Uri | undefined {
    try {
        return vscode.Uri.parse(line.trim(), true);
    } catch {
        return undefined;
    }
}

/** What lies elsewhere is copied, since art is read only from where the recipes are. */
function brought(uri: vscode.Uri): BroughtArt {
    if (vscode.workspace.getWorkspaceFolder(uri) !== undefined) return { uri };
    return { name: uri.path.slice(uri.path.lastIndexOf('/') + 1), bytes: () => vscode.workspace.fs.readFile(uri) };
}
