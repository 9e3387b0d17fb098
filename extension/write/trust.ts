import * as vscode from 'vscode';

/** Whether files may be written here. Where the workspace is not trusted it says why not, and leads to where that is changed. */
export function mayWrite(): boolean {
    return isTrusted(vscode.l10n.t('no files are written, since their names and places come from the recipes'));
}

/** Whether git may be started here. The same where it may not. */
export function mayStartGit(): boolean {
    return isTrusted(noGit);
}

/** Why git may not be started here; undefined where it may. */
export function whyNoGit(): string | undefined {
    return vscode.workspace.isTrusted ? undefined : sentence(noGit);
}

const noGit = vscode.l10n.t('earlier versions are not looked up, since git goes by what a repository’s settings say');

function isTrusted(but: string): boolean {
    if (vscode.workspace.isTrusted) return true;
    void vscode.window.showWarningMessage(sentence(but), vscode.l10n.t('Manage Workspace Trust')).then((chosen) => {
        if (chosen !== undefined) void vscode.commands.executeCommand('workbench.trust.manage');
    });
    return false;
}

function sentence(but: string): string {
    return vscode.l10n.t('This workspace is not trusted: recipes are checked and shown, but {0}.', but);
}
