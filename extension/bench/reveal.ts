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
    const range = new vscode.Range(document.positionAt(where.offset), document.positionAt(where.offset + where.length));
    const editor = await vscode.window.showTextDocument(document, {
        viewColumn: columnOf(uri, benchColumn),
        preserveFocus: !focus,
        selection: range,
    });
    editor.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** Brings a text to the front, with its cursor where it is, and the keyboard into it. */
export async function revealText(uri: vscode.Uri, benchColumn: vscode.ViewColumn | undefined): Promise<void> {
    await vscode.window.showTextDocument(uri, { viewColumn: columnOf(uri, benchColumn) });
}

function columnOf(uri: vscode.Uri, benchColumn: vscode.ViewColumn | undefined): vscode.ViewColumn {
    const open = vscode.window.tabGroups.all.find((group) =>
        group.tabs.some((tab) => tab.input instanceof vscode.TabInputText && tab.input.uri.toString() === uri.toString()),
    );
    return open?.viewColumn ?? (benchColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One);
}
