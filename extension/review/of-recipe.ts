import * as vscode from 'vscode';
import { method } from '../../shared/view/protocol';
import type { PageQuestion } from './page-panel';

/** The recipe under the cursor beside its base and all that is based on either. */
export function variants(uri: vscode.Uri): PageQuestion {
    return {
        method: method.table,
        params: placeIn(uri),
        title: (name) => `Variants: ${name}`,
        doing: 'Laying the variants side by side',
        watched: 'every file',
        ofRevisions: false,
    };
}

/** How the runs of the recipe under the cursor went. */
export function history(uri: vscode.Uri): PageQuestion {
    return {
        method: method.history,
        params: { ...placeIn(uri), ...(!vscode.workspace.isTrusted && { present: true }) },
        title: (name) => `Runs: ${name}`,
        doing: 'Looking up what was planned then',
        watched: [uri.toString()],
        ofRevisions: vscode.workspace.isTrusted,
    };
}

/** A file, and where the cursor is in it if it is in front. */
function placeIn(uri: vscode.Uri): { uri: string; offset?: number } {
    const editor = vscode.window.activeTextEditor;
    const here = editor?.document.uri.toString() === uri.toString();
    return { uri: uri.toString(), ...(here && { offset: editor.document.offsetAt(editor.selection.active) }) };
}
