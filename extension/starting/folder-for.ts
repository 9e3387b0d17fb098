import * as vscode from 'vscode';

/** The folder in which a new file belongs: the one that was chosen, that of the chosen file or of the recipe in front, else one that is asked for. */
export async function folderFor(place: unknown): Promise<vscode.Uri | undefined> {
    const chosen = place instanceof vscode.Uri ? place : undefined;
    if (chosen !== undefined && (await isFolder(chosen))) return chosen;
    const file = chosen ?? recipeInFront();
    if (file !== undefined && vscode.workspace.getWorkspaceFolder(file) !== undefined) {
        const beside = vscode.Uri.joinPath(file, '..');
        // Art mostly lies in a folder of its own, beside which the recipes are.
        const isArtFolder = chosen !== undefined && /\/art$/i.test(beside.path);
        const above = vscode.Uri.joinPath(beside, '..');
        return isArtFolder && vscode.workspace.getWorkspaceFolder(above) !== undefined ? above : beside;
    }
    const folders = vscode.workspace.workspaceFolders ?? [];
    if (folders.length === 0) {
        const open = await vscode.window.showInformationMessage(
            vscode.l10n.t('Open the folder that is to hold your recipes first.'),
            vscode.l10n.t('Open Folder'),
        );
        if (open !== undefined) await vscode.commands.executeCommand('vscode.openFolder');
        return undefined;
    }
    if (folders.length === 1) return folders[0]!.uri;
    return (await vscode.window.showWorkspaceFolderPick({ placeHolder: vscode.l10n.t('In which folder is the recipe to lie?') }))
        ?.uri;
}

function recipeInFront(): vscode.Uri | undefined {
    const document = vscode.window.activeTextEditor?.document;
    return document?.languageId === 'kerfbook' && document.uri.scheme !== 'kerfbook-stock' ? document.uri : undefined;
}

async function isFolder(uri: vscode.Uri): Promise<boolean> {
    try {
        return ((await vscode.workspace.fs.stat(uri)).type & vscode.FileType.Directory) !== 0;
    } catch {
        return false;
    }
}
