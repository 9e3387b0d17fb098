import * as vscode from 'vscode';
import type { TextChange, WrittenAnswer } from '../../shared/view/protocol';

type Written = Exclude<WrittenAnswer, { readonly problem: string }>;

/**
 * Makes the server's edits of one file, as one step that can be undone. The places are those of the text
 * that the server knows: what was typed since would be torn apart, and nothing is written then.
 * @returns the document, or undefined with the reason shown
 */
export async function applyEdits({ uri, version, edits }: Written): Promise<vscode.TextDocument | undefined> {
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri, true));
    if (document.version !== version && document.isDirty) {
        void vscode.window.showErrorMessage(vscode.l10n.t('The file was changed meanwhile. Nothing was written; try it again.'));
        return undefined;
    }
    if (await vscode.workspace.applyEdit(workspaceEdit(document, edits))) return document;
    void vscode.window.showErrorMessage(vscode.l10n.t('The editor refused to change the file. Nothing was written.'));
    return undefined;
}

/** Changes of a document's text as the editor takes them. */
export function workspaceEdit(document: vscode.TextDocument, changes: readonly TextChange[]): vscode.WorkspaceEdit {
    const edit = new vscode.WorkspaceEdit();
    for (const { offset, length, text } of changes) {
        edit.replace(document.uri, new vscode.Range(document.positionAt(offset), document.positionAt(offset + length)), text);
    }
    return edit;
}
