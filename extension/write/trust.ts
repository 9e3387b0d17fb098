import * as vscode from 'vscode';

/** Whether files may be written here. Where the workspace is not trusted it says why not, and leads to where that is changed. */
export function mayWrite(): boolean {
    return isTrusted('no files are written, since their names and places come from the recipes');
}

/** Whether git may be started here. The same where it may not. */
export function mayStartGit(): boolean {
    return isTrusted('earlier versions are not looked up, since git goes by what a repository’s settings say');
}

function isTrusted(but: string): boolean {
    if (vscode.workspace.isTrusted) return true;
    const why = `This workspace is not trusted: recipes are checked and shown, but ${but}.`;
    void vscode.window.showWarningMessage(why, 'Manage Workspace Trust').then((chosen) => {
        if (chosen !== undefined) void vscode.commands.executeCommand('workbench.trust.manage');
    });
    return false;
}
