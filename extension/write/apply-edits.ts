import * as vscode from 'vscode';
import type { WrittenAnswer } from '../../shared/view/protocol';

type Written = Exclude<WrittenAnswer, { readonly problem: string }>;

/**
 * Makes the server's edits of one file, as one step that can be undone. The places are those of the text
 * that the server knows: what was typed since would be torn apart, and nothing is written then.
 * @returns the document, or undefined with the reason shown
 */
export async function applyEdits({ uri, version, edits }: Written): Promise<vscode.TextDocument | undefined> {
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri, true));
    if (document.version !== version && document.isDirty) {
        void vscode.window.showErrorMessage('The file was changed meanwhile. Nothing was written; try it again.');
        return undefined;
    }
    const edit = new vscode.WorkspaceEdit();
    for (const { offset, length, text } of edits) {
        edit.replace(document.uri, new vscode.Range(document.positionAt(offset), document.positionAt(offset + length)), text);
    }
    if (await vscode.workspace.applyEdit(edit)) return document;
    void vscode.window.showErrorMessage('The editor refused to change the file. Nothing was written.');
    return undefined;
}
