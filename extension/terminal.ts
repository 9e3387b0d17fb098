import path from 'node:path';
import * as vscode from 'vscode';

/** Makes `kerfbook` a command of the editor's terminals. One that the shell knows already comes first. */
export function offerCommandLine({ environmentVariableCollection: variables, extensionUri }: vscode.ExtensionContext): void {
    const home = vscode.Uri.joinPath(extensionUri, 'extension', 'terminal').fsPath;
    variables.description = vscode.l10n.t('The command kerfbook, as it came with the extension.');
    variables.replace('KERFBOOK_NODE', process.execPath);
    // A shell may set its path anew when it starts, so that it is added once more then.
    const always = { applyAtProcessCreation: true, applyAtShellIntegration: true };
    variables.append('PATH', `${path.delimiter}${home}`, always);
}
