import * as vscode from 'vscode';
import type { Where } from '../../shared/quantity/where';
import { mayHoldRecipes } from '../recipe-place';

/**
 * Shows a place of the text. The text keeps its column when it is already open; otherwise it opens
 * beside the bench view, never on top of it.
 */
export async function revealPlace(where: Where, focus: boolean, benchColumn: vscode.ViewColumn | undefined): Promise<void> {
    const uri = vscode.Uri.parse(where.uri, true);
    if (!mayHoldRecipes(uri)) return;
    const document = await vscode.workspace.openTextDocument(uri);
    const open = vscode.window.tabGroups.all.find((group) =>
        group.tabs.some((tab) => tab.input instanceof vscode.TabInputText && tab.input.uri.toString() === uri.toString()),
    );
    const beside = benchColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One;
    const range = new vscode.Range(document.positionAt(where.offset), document.positionAt(where.offset + where.length));
    const editor = await vscode.window.showTextDocument(document, {
        viewColumn: open?.viewColumn ?? beside,
        preserveFocus: !focus,
        selection: range,
    });
    editor.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}
