import * as vscode from 'vscode';
import { requests } from '../../shared/view/requests';
import { isRunFileName } from '../../shared/view/run-file-name';
import type { RecipeServer } from '../server';
import { mayWrite } from '../write/trust';

/** Bytes; a run of the longest recipe has a few thousand. */
const LARGEST = 200_000;

/**
 * "Take In a Run": a run that was saved on the page for the tablet is put beside the others of its recipe. The file is chosen by the
 * maker, so that it may lie anywhere; it is read and left where it is. The same a second time changes nothing.
 */
export async function takeInRun(server: RecipeServer, uri: string, recipe: string, title: string): Promise<void> {
    if (!mayWrite()) return;
    const chosen = await vscode.window.showOpenDialog({
        title: vscode.l10n.t('Which run of {0}, as it was saved on the tablet?', title),
        openLabel: vscode.l10n.t('Take In'),
        canSelectMany: true,
        filters: { [vscode.l10n.t('Runs')]: ['kerf'] },
    });
    for (const file of chosen ?? []) await takeIn(server, { uri, recipe }, file, title);
}

async function takeIn(
    server: RecipeServer,
    of: { readonly uri: string; readonly recipe: string },
    file: vscode.Uri,
    title: string,
): Promise<void> {
    // A second download of one name is called `… (1).kerf` by many browsers: it is the same run.
    const name = (file.path.split('/').at(-1) ?? '').replace(/ ?\(\d+\)(?=\.kerf$)/, '');
    const text = isRunFileName(name) ? await read(file) : undefined;
    if (text === undefined) {
        void vscode.window.showErrorMessage(
            vscode.l10n.t('{0} is not a run as the page for the tablet saves it. Its name begins with a date.', name),
        );
        return;
    }
    const answer = await server.ask(requests.takeRun, { ...of, name, text });
    if (answer === undefined || 'problem' in answer) {
        void vscode.window.showErrorMessage(answer?.problem ?? vscode.l10n.t('The run could not be taken in.'));
        return;
    }
    const place = vscode.Uri.parse(answer.uri, true);
    const path = vscode.workspace.asRelativePath(place, false);
    const said = answer.known
        ? vscode.l10n.t('{0} has been taken in before, and nothing has changed.', path)
        : vscode.l10n.t('Run of {0} taken in as {1}.', title, path);
    const show = vscode.l10n.t('Show');
    void vscode.window.showInformationMessage(said, show).then(async (choice) => {
        if (choice === show) await vscode.window.showTextDocument(place);
    });
}

async function read(file: vscode.Uri): Promise<string | undefined> {
    try {
        const { size } = await vscode.workspace.fs.stat(file);
        if (size > LARGEST) return undefined;
        return new TextDecoder('utf-8', { fatal: true }).decode(await vscode.workspace.fs.readFile(file));
    } catch {
        return undefined;
    }
}
