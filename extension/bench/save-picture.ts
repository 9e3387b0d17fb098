import * as vscode from 'vscode';
import { fromBase64 } from '../../shared/quantity/base64';
import { whyNotWritten } from '../write/why-not-written';
import { savedPage } from './saved-page';

/** Asks where a picture is to go, beside its recipe at first, and puts it there. */
export async function savePicture(recipe: vscode.Uri, name: string, png: string): Promise<void> {
    const dialog = { title: vscode.l10n.t('Save the picture'), filters: { [vscode.l10n.t('PNG picture')]: ['png'] } };
    await save(recipe, `${name}.png`, dialog, async () => fromBase64(png));
}

/** The same for the whole bench view as a page, which a browser prints: the editor's own pages cannot. */
export async function savePage(recipe: vscode.Uri, dist: vscode.Uri, name: string, title: string, body: string): Promise<void> {
    const dialog = { title: vscode.l10n.t('Save the bench view as a page'), filters: { [vscode.l10n.t('HTML page')]: ['html'] } };
    const place = await save(recipe, `${name}-bench.html`, dialog, async () => {
        const style = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(dist, 'bench.css'));
        return new TextEncoder().encode(savedPage(title, body, new TextDecoder().decode(style)));
    });
    if (place?.scheme !== 'file') return;
    const open = vscode.l10n.t('Open in Browser');
    const chosen = await vscode.window.showInformationMessage(
        vscode.l10n.t('The page is saved. A browser can print it, or make a PDF of it.'),
        open,
    );
    if (chosen === open) await vscode.env.openExternal(place);
}

/** @returns where it lies; undefined where nothing was written */
async function save(
    recipe: vscode.Uri,
    name: string,
    dialog: vscode.SaveDialogOptions,
    bytes: () => Promise<Uint8Array>,
): Promise<vscode.Uri | undefined> {
    const folder = vscode.Uri.joinPath(recipe, '..');
    const beside =
        vscode.workspace.fs.isWritableFileSystem(folder.scheme) === true ? folder : vscode.workspace.workspaceFolders?.[0]?.uri;
    const place = await vscode.window.showSaveDialog({
        ...dialog,
        ...(beside === undefined ? {} : { defaultUri: vscode.Uri.joinPath(beside, name) }),
    });
    if (place === undefined) return undefined;
    try {
        await vscode.workspace.fs.writeFile(place, await bytes());
        return place;
    } catch (error) {
        void vscode.window.showErrorMessage(whyNotWritten(place.path, error));
        return undefined;
    }
}
