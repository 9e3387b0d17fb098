import * as vscode from 'vscode';
import type { WriteRecipeParams, WritingAnswer, WritingOptions } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { CurrentRecipe } from '../current-recipe';
import { recipePlace } from '../recipe-place';
import type { RecipeServer } from '../server';
import { mayWrite } from './trust';

/** "Write Files for Machine and Bench": everything the server builds, into `made/<recipe>` beside the recipe. */
export function offerWriting(server: RecipeServer, current: CurrentRecipe): vscode.Disposable {
    return vscode.commands.registerCommand('kerfbook.writeFiles', async (place?: unknown, named?: unknown) => {
        const uri = current.fileFor(place);
        if (uri === undefined) {
            void vscode.window.showInformationMessage(vscode.l10n.t('Open the recipe whose files are to be written.'));
            return;
        }
        if (!mayWrite()) return;
        if (vscode.workspace.getWorkspaceFolder(uri) === undefined) {
            void vscode.window.showWarningMessage(
                vscode.l10n.t('Files are written only inside an open folder. Open the folder that holds this recipe.'),
            );
            return;
        }
        // Of a file that was chosen in the explorer nobody has said which recipe is meant.
        const meant = recipePlace(place) === undefined && uri.toString() === current.uri ? current.recipe : undefined;
        const recipe = typeof named === 'string' ? named : (meant ?? (await chooseRecipe(current.namesIn(uri.toString()))));
        if (recipe === undefined) return;
        await writeRecipe(server, uri, recipe, {});
    });
}

async function chooseRecipe(names: readonly string[]): Promise<string | undefined> {
    if (names.length > 1) return vscode.window.showQuickPick(names, { title: vscode.l10n.t('Write the files of which recipe?') });
    if (names.length === 0)
        void vscode.window.showWarningMessage(vscode.l10n.t('This file holds no recipe that can be planned.'));
    return names[0];
}

async function writeRecipe(server: RecipeServer, uri: vscode.Uri, recipe: string, options: WritingOptions): Promise<void> {
    const params: WriteRecipeParams = { uri: uri.toString(), recipe, ...options };
    const answer = await vscode.window.withProgress(
        {
            location: vscode.ProgressLocation.Notification,
            title: vscode.l10n.t('Working out the files of {0}', recipe),
            cancellable: true,
        },
        (_progress, token) => server.ask(requests.writeRecipe, params, token),
    );
    if (answer === undefined) return;
    if (answer.written === 0) {
        void vscode.window.showErrorMessage(
            vscode.l10n.t('Nothing was written for {0}. {1}', recipe, shortly(answer.problems)).trim(),
        );
        return;
    }
    const text = `${recipe}: ${writtenTo(answer)}. ${shortly(answer.problems)}`.trim();
    const show = answer.problems.length > 0 ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
    const chosen = await show(text, vscode.l10n.t('Show'), ...offers(answer));
    if (chosen === vscode.l10n.t('Show'))
        await vscode.commands.executeCommand('revealInExplorer', vscode.Uri.parse(answer.folder, true));
    const wish = wishOf(chosen);
    if (wish !== undefined) await writeRecipe(server, uri, recipe, wish);
}

const writeOver = vscode.l10n.t('Write Over Changed Files');
const takeAway = vscode.l10n.t('Take Old Files Away');

/** What can be done about files that a writing has kept or left. */
export function offers({ kept, stale }: WritingAnswer): string[] {
    return [...(kept ? [writeOver] : []), ...(stale ? [takeAway] : [])];
}

/** The writing that somebody has asked for by a button; undefined for any other. */
export function wishOf(chosen: string | undefined): WritingOptions | undefined {
    if (chosen === writeOver) return { force: true };
    return chosen === takeAway ? { clean: true } : undefined;
}

/** `7 files written to made/heron-tray` */
export function writtenTo({ written, folder }: WritingAnswer): string {
    const path = vscode.workspace.asRelativePath(vscode.Uri.parse(folder, true), false);
    return vscode.l10n.t('{0} {1} written to {2}', written, written === 1 ? 'file' : 'files', path);
}

/** A message has room for a few only; the first says most. */
export function shortly(problems: readonly string[]): string {
    const [told, left] = [problems.slice(0, 3), problems.length - 3];
    return [...told, ...(left > 0 ? [vscode.l10n.t('So it is with {0} more.', left)] : [])].join(' ');
}
