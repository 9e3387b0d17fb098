import * as vscode from 'vscode';
import type { Where } from '../../shared/quantity/where';
import type { RewriteParams } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import { workspaceEdit } from '../write/apply-edits';

/**
 * Writes a number that was typed or dragged in the picture into the text, as one edit that can be
 * undone there. Only the panel's own file is written to. Answers why not, where it was not.
 */
export async function writeNumber(
    server: RecipeServer,
    uri: vscode.Uri,
    { where, textVersion, text }: { readonly where: Where; readonly textVersion: number; readonly text: string },
): Promise<string | undefined> {
    if (where.uri !== uri.toString()) return vscode.l10n.t('This number stands in another file: open it there.');
    const params: RewriteParams = { uri: where.uri, textVersion, offset: where.offset, length: where.length, text };
    const answer = await server.ask(requests.rewrite, params);
    if (answer === undefined) return vscode.l10n.t('Nothing was written: the recipe cannot be read at present.');
    if ('problem' in answer) return answer.problem;
    const document = await vscode.workspace.openTextDocument(uri);
    if (document.version !== answer.version) return vscode.l10n.t('The text was changed meanwhile. Nothing was written.');
    return (await vscode.workspace.applyEdit(workspaceEdit(document, answer.edits)))
        ? undefined
        : vscode.l10n.t('The editor did not take the change.');
}
