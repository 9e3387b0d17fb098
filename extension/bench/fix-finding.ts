import * as vscode from 'vscode';
import type { Where } from '../../shared/quantity/where';
import { mayHoldRecipes } from '../recipe-place';

/** The editor asks for what an action does only of so many. */
const RESOLVED = 50;

/** Does what a fix of a finding does, as the text offers it at that place: known by its title, since the editor hands over no more. */
export async function fixFinding(title: string, where: Where): Promise<void> {
    const uri = vscode.Uri.parse(where.uri, true);
    if (!mayHoldRecipes(uri)) return;
    const document = await vscode.workspace.openTextDocument(uri);
    const range = new vscode.Range(document.positionAt(where.offset), document.positionAt(where.offset + where.length));
    const offered = await vscode.commands.executeCommand<readonly vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        uri,
        range,
        vscode.CodeActionKind.QuickFix.value,
        RESOLVED,
    );
    const edit = offered.find((action) => action.title === title)?.edit;
    if (edit !== undefined) await vscode.workspace.applyEdit(edit);
    else
        void vscode.window.showInformationMessage(
            vscode.l10n.t('The text has changed meanwhile: “{0}” is not offered there any more.', title),
        );
}
