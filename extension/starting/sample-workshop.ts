import * as vscode from 'vscode';
import { mayWrite } from '../write/trust';
import { whyNotWritten } from '../write/why-not-written';
import { exists } from '../write/write-for-server';

/** Which recipe is shown first: it has the most in it. */
const FIRST = 'heron-tray.kerf';
const NAME = 'kerfbook-samples';
/** The copy that is to be shown once its folder is open. */
const TO_SHOW = 'kerfbook.samplesToShow';

/**
 * "Copy the Sample Workshop…": the samples that travel with the extension, copied into a new folder in the place that is chosen, and the
 * first of them opened with its bench view. Nothing that is there is written over; where a file cannot be written, no half copy stays.
 */
export async function offerSamples(context: vscode.ExtensionContext): Promise<vscode.Disposable> {
    const command = vscode.commands.registerCommand('kerfbook.copySamples', (place?: unknown) => begin(context, place));
    const waiting = context.globalState.get<string>(TO_SHOW);
    const isHere = vscode.workspace.workspaceFolders?.some(({ uri }) => uri.toString() === waiting) === true;
    if (waiting !== undefined && isHere) {
        await context.globalState.update(TO_SHOW, undefined);
        void show(vscode.Uri.parse(waiting, true));
    }
    return command;
}

async function begin(context: vscode.ExtensionContext, place: unknown): Promise<void> {
    const home = place instanceof vscode.Uri ? place : await chooseFolder();
    if (home === undefined) return;
    const isInside = vscode.workspace.getWorkspaceFolder(home) !== undefined;
    if (isInside && !mayWrite()) return;
    const folder = await freeFolder(home);
    try {
        await copyTo(folder, context.extensionUri);
    } catch (error) {
        await vscode.workspace.fs.delete(folder, { recursive: true }).then(undefined, () => undefined);
        void vscode.window.showErrorMessage(vscode.l10n.t('No samples were copied: {0}', whyNotWritten(folder.fsPath, error)));
        return;
    }
    if (isInside) return show(folder);
    await context.globalState.update(TO_SHOW, folder.toString());
    const hasFolder = (vscode.workspace.workspaceFolders?.length ?? 0) > 0;
    await vscode.commands.executeCommand('vscode.openFolder', folder, { forceNewWindow: hasFolder });
}

async function chooseFolder(): Promise<vscode.Uri | undefined> {
    const chosen = await vscode.window.showOpenDialog({
        title: vscode.l10n.t('Where is the folder {0} to lie?', NAME),
        openLabel: vscode.l10n.t('Copy Here'),
        canSelectFiles: false,
        canSelectFolders: true,
        canSelectMany: false,
    });
    return chosen?.[0];
}

/** The first of `kerfbook-samples`, `kerfbook-samples-2`, … that is not there yet. */
async function freeFolder(home: vscode.Uri): Promise<vscode.Uri> {
    for (let number = 1; ; number += 1) {
        const folder = vscode.Uri.joinPath(home, number === 1 ? NAME : `${NAME}-${number}`);
        if (!(await exists(folder))) return folder;
    }
}

/** An extension in a browser cannot list its own folder, so that the build has written down what lies in it. */
async function copyTo(folder: vscode.Uri, extension: vscode.Uri): Promise<void> {
    const { fs } = vscode.workspace;
    const list = await fs.readFile(vscode.Uri.joinPath(extension, 'dist', 'samples.json'));
    const names: readonly string[] = JSON.parse(new TextDecoder().decode(list));
    for (const name of names) {
        const bytes = await fs.readFile(vscode.Uri.joinPath(extension, 'samples', name));
        await fs.writeFile(vscode.Uri.joinPath(folder, name), bytes);
    }
}

async function show(folder: vscode.Uri): Promise<void> {
    await vscode.window.showTextDocument(vscode.Uri.joinPath(folder, FIRST), { preview: false });
    await vscode.commands.executeCommand('kerfbook.openBenchViewToSide');
}
