import * as vscode from 'vscode';

const reasons: Readonly<Record<string, string>> = {
    NoPermissions: vscode.l10n.t('writing is not allowed there. Allow it for this folder, or choose another.'),
    FileIsADirectory: vscode.l10n.t('a folder of that name is in the way. Move or rename it.'),
    FileNotADirectory: vscode.l10n.t('a file stands where a folder is needed. Move or rename it.'),
    Unavailable: vscode.l10n.t('the file system cannot be reached. Connect it, then try again.'),
};

/** A sentence that says why the editor could not write something, and what to do. */
export function whyNotWritten(path: string, error: unknown): string {
    const code = error instanceof vscode.FileSystemError ? error.code : '';
    const reason = Object.hasOwn(reasons, code) ? reasons[code] : error instanceof Error ? error.message : String(error);
    return vscode.l10n.t('{0} cannot be written: {1}', path, reason);
}
