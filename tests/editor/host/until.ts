import * as vscode from 'vscode';
import { ruleOf } from '../../../extension/rule-of';

/** Waits for what the server brings in its own time. The machine may be busy with other work. */
export async function until<T>(what: string, look: () => T | undefined | false | Promise<T | undefined | false>): Promise<T> {
    const end = Date.now() + 45_000;
    for (;;) {
        const found = await look();
        if (found !== undefined && found !== false) return found;
        if (Date.now() > end) throw new Error(`Waited in vain: ${what}`);
        await new Promise((resolve) => setTimeout(resolve, 100));
    }
}

export function fileIn(path: string): vscode.Uri {
    return vscode.Uri.joinPath(vscode.workspace.workspaceFolders![0]!.uri, path);
}

export async function open(path: string): Promise<vscode.TextEditor> {
    return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(fileIn(path)));
}

/** The findings of a file that are ours, once there are any, with the rule alone as their code: the editor has its page beside it. */
export function findings(uri: vscode.Uri): vscode.Diagnostic[] {
    return vscode.languages.getDiagnostics(uri).flatMap((each) => {
        const code = ruleOf(each);
        return code === undefined ? [] : [{ ...each, code }];
    });
}

export function placeOf(document: vscode.TextDocument, text: string, within = 0): vscode.Position {
    const offset = document.getText().indexOf(text);
    if (offset < 0) throw new Error(`The text does not hold “${text}”.`);
    return document.positionAt(offset + within);
}
