import * as vscode from 'vscode';
import { method } from '../../shared/view/protocol';
import type { PageQuestion } from './page-panel';

/** The recipe under the cursor beside its base and all that is based on either. */
export function variants(uri: vscode.Uri): PageQuestion {
    const editor = vscode.window.activeTextEditor;
    const offset =
        editor?.document.uri.toString() === uri.toString() ? editor.document.offsetAt(editor.selection.active) : undefined;
    return {
        method: method.table,
        params: { uri: uri.toString(), ...(offset === undefined ? {} : { offset }) },
        title: (name) => `Variants: ${name}`,
        doing: 'Laying the variants side by side',
        watched: 'every file',
    };
}
