import * as vscode from 'vscode';
import { isSafeName } from '../../shared/sheets/safe-path';
import type { InsertArtParams } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import { artMimes, type BroughtArt, broughtArt } from './dropped-art';

const mimes = ['text/uri-list', 'files', ...artMimes];
const kind = vscode.DocumentDropOrPasteEditKind.Empty.append('kerfbook', 'art');

/** Art that is dropped on a recipe, or pasted into it, is declared there and used in the step under it. */
export function offerArt(server: RecipeServer): vscode.Disposable {
    const recipes = { language: 'kerfbook' };
    return vscode.Disposable.from(
        vscode.languages.registerDocumentDropEditProvider(
            recipes,
            {
                provideDocumentDropEdits: async (document, position, data, token) => {
                    const made = await editFor(server, document, position, data, token);
                    if (made === undefined) return undefined;
                    const edit = new vscode.DocumentDropEdit('', made.title, kind);
                    edit.additionalEdit = made.edit;
                    return edit;
                },
            },
            { dropMimeTypes: mimes, providedDropEditKinds: [kind] },
        ),
        vscode.languages.registerDocumentPasteEditProvider(
            recipes,
            {
                provideDocumentPasteEdits: async (document, [range], data, _context, token) => {
                    const made = range && (await editFor(server, document, range.start, data, token));
                    if (made === undefined) return undefined;
                    const edit = new vscode.DocumentPasteEdit('', made.title, kind);
                    edit.additionalEdit = made.edit;
                    return [edit];
                },
            },
            { pasteMimeTypes: mimes, providedPasteEditKinds: [kind] },
        ),
    );
}

async function editFor(
    server: RecipeServer,
    document: vscode.TextDocument,
    position: vscode.Position,
    data: vscode.DataTransfer,
    token: vscode.CancellationToken,
): Promise<{ title: string; edit: vscode.WorkspaceEdit } | undefined> {
    const art = await broughtArt(data);
    if (art.length === 0 || token.isCancellationRequested) return undefined;
    const edit = new vscode.WorkspaceEdit();
    const uris: vscode.Uri[] = [];
    const beside = art.every((each) => 'uri' in each) ? undefined : await folderFor(document, server);
    for (const each of art) {
        const uri = 'uri' in each ? each.uri : typeof beside === 'object' ? await copied(each, beside, uris, edit) : undefined;
        if (uri !== undefined) uris.push(uri);
    }
    if (uris.length < art.length) {
        void vscode.window.showWarningMessage(refusal(beside));
        return undefined;
    }
    const params: InsertArtParams = {
        uri: document.uri.toString(),
        offset: document.offsetAt(position),
        files: uris.map(String),
    };
    const answer = await server.ask(requests.insertArt, params, token);
    if (answer === undefined || token.isCancellationRequested) return undefined;
    if ('problem' in answer) {
        void vscode.window.showInformationMessage(answer.problem);
        return undefined;
    }
    if (answer.version !== document.version) return undefined;
    for (const { offset, text } of answer.edits) edit.insert(document.uri, document.positionAt(offset), text);
    return {
        title: art.every((each) => 'uri' in each)
            ? vscode.l10n.t('Bring in as art')
            : vscode.l10n.t('Copy into art/ and bring in'),
        edit,
    };
}

/** The folder beside a recipe into which art is copied, or why there is none. */
async function folderFor(document: vscode.TextDocument, server: RecipeServer): Promise<vscode.Uri | string> {
    if (vscode.workspace.getWorkspaceFolder(document.uri) === undefined)
        return vscode.l10n.t('This art would have to be copied beside the recipe: open the folder that holds the recipe first.');
    const folder = vscode.Uri.joinPath(document.uri, '..', 'art');
    const { answer: problem, failed } = await server.attempt(requests.mayHold, { folder: folder.toString() });
    return problem ?? failed ?? folder;
}

function refusal(beside: vscode.Uri | string | undefined): string {
    if (!vscode.workspace.isTrusted)
        return vscode.l10n.t('This art lies outside the workspace, and nothing is copied into a workspace that is not trusted.');
    if (typeof beside === 'string') return beside;
    return vscode.l10n.t('This art cannot be copied beside the recipe. Put it there yourself, then drop it again.');
}

/** Asks for the file to be made in the same undoable edit, under a name that nothing has yet. */
async function copied(
    { name, bytes }: Exclude<BroughtArt, { readonly uri: vscode.Uri }>,
    folder: vscode.Uri,
    taken: readonly vscode.Uri[],
    edit: vscode.WorkspaceEdit,
): Promise<vscode.Uri | undefined> {
    if (!vscode.workspace.isTrusted || !isSafeName(name)) return undefined;
    try {
        const contents = await bytes();
        const dot = name.lastIndexOf('.');
        for (let count = 1; count < 1000; count += 1) {
            const uri = vscode.Uri.joinPath(folder, count === 1 ? name : `${name.slice(0, dot)}-${count}${name.slice(dot)}`);
            if (taken.some((other) => other.toString() === uri.toString()) || (await exists(uri))) continue;
            edit.createFile(uri, { contents, overwrite: false, ignoreIfExists: false });
            return uri;
        }
    } catch {
        // told by the refusal
    }
    return undefined;
}

function exists(uri: vscode.Uri): Promise<boolean> {
    return Promise.resolve(vscode.workspace.fs.stat(uri)).then(
        () => true,
        () => false,
    );
}
