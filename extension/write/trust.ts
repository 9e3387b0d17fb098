import * as vscode from 'vscode';

/** Whether files may be written here. Where the workspace is not trusted it says why not, and leads to where that is changed. */
export function mayWrite(): boolean {
    if (vscode.workspace.isTrusted) return true;
    const why =
        'This workspace is not trusted: recipes are checked and shown, but no files are written, since their names and places come from the recipes.';
    void vscode.window.showWarningMessage(why, 'Manage Workspace Trust').then((chosen) => {
        if (chosen !== undefined) void vscode.commands.executeCommand('workbench.trust.manage');
    });
    return false;
}
