import * as vscode from 'vscode';
import { fromBase64 } from '../../shared/quantity/base64';
import { whyNotWritten } from '../write/why-not-written';

/** Asks where a picture is to go, beside its recipe at first, and puts it there. */
export async function savePicture(recipe: vscode.Uri, name: string, png: string): Promise<void> {
    const folder = vscode.Uri.joinPath(recipe, '..');
    const beside =
        vscode.workspace.fs.isWritableFileSystem(folder.scheme) === true ? folder : vscode.workspace.workspaceFolders?.[0]?.uri;
    const place = await vscode.window.showSaveDialog({
        title: vscode.l10n.t('Save the picture'),
        filters: { 'PNG picture': ['png'] },
        ...(beside === undefined ? {} : { defaultUri: vscode.Uri.joinPath(beside, `${name}.png`) }),
    });
    if (place === undefined) return;
    try {
        await vscode.workspace.fs.writeFile(place, fromBase64(png));
    } catch (error) {
        void vscode.window.showErrorMessage(whyNotWritten(place.path, error));
    }
}
