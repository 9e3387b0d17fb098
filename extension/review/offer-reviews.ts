import * as vscode from 'vscode';
import { command } from '../../shared/view/protocol';
import { revealPlace } from '../bench/reveal';
import type { CurrentRecipe } from '../current-recipe';
import { readPlace } from '../read-place';
import { mayHoldRecipes } from '../recipe-place';
import type { RecipeServer } from '../server';
import { mayStartGit } from '../write/trust';
import { chooseRevision } from './choose-revision';
import { chooseDays, chooseStart } from './choose-start';
import { Pages } from './pages';

/** The commands that set recipes beside each other. */
export function offerReviews(server: RecipeServer, current: CurrentRecipe, memory: vscode.Memento): vscode.Disposable {
    const pages = new Pages(server, memory);
    // Source control says nothing of the kind of its files, so its menus ask whether there are recipes at all.
    void vscode.commands.executeCommand('setContext', 'kerfbook.active', true);
    const on = (name: string, work: (place: unknown, all: unknown) => unknown): vscode.Disposable =>
        vscode.commands.registerCommand(name, work);
    return vscode.Disposable.from(
        pages,
        on('kerfbook.compareWithCommitted', (place) => {
            const uri = recipeOf(place, current);
            if (uri !== undefined && mayStartGit()) pages.show({ kind: 'compare', uri: uri.toString() });
        }),
        on('kerfbook.compareWithRevision', async (place) => {
            const uri = recipeOf(place, current);
            const revision = uri && mayStartGit() && (await chooseRevision(server, uri));
            if (uri !== undefined && typeof revision === 'string') pages.show({ kind: 'compare', uri: uri.toString(), revision });
        }),
        on('kerfbook.compareSelected', (_place, all) => {
            const [before, after] = (Array.isArray(all) ? all : []).filter(isRecipe);
            if (before === undefined || after === undefined) {
                void vscode.window.showInformationMessage(
                    vscode.l10n.t('Select two recipe files (.kerf) in the explorer to compare them.'),
                );
            } else pages.show({ kind: 'compare', uri: after.toString(), before: before.toString() });
        }),
        on('kerfbook.compareVariants', (place) => {
            const uri = recipeOf(place, current);
            if (uri !== undefined) pages.show({ kind: 'variants', ...placeIn(uri, current) });
        }),
        on('kerfbook.showHistory', (place) => {
            const uri = recipeOf(place, current);
            if (uri !== undefined) pages.show({ kind: 'history', ...placeIn(uri, current) });
        }),
        on('kerfbook.showWeek', async (place) => {
            const uri = recipeOf(place, current);
            const start = uri && (await chooseStart());
            if (uri !== undefined && start !== undefined) pages.show({ kind: 'week', uri: uri.toString(), start });
        }),
        on('kerfbook.showSeason', async (place) => {
            const uri = recipeOf(place, current);
            const days = uri && (await chooseDays());
            if (uri !== undefined && days !== undefined) pages.show({ kind: 'season', uri: uri.toString(), ...days });
        }),
        on('kerfbook.refreshPage', () => pages.inFront?.refresh()),
        on('kerfbook.stopPage', () => pages.inFront?.stop()),
        on(command.goToPlace, (place) => {
            const where = readPlace(place);
            return where && revealPlace(where, true, pages.inFront?.panel.viewColumn);
        }),
    );
}

/** The recipe that a command was given: by the explorer and the editor as an address, by source control inside of its own words. */
function recipeOf(place: unknown, current: CurrentRecipe): vscode.Uri | undefined {
    const given = resourceOf(place);
    if (given !== undefined && !isRecipe(given)) {
        void vscode.window.showInformationMessage(vscode.l10n.t('Only recipe files (.kerf) can be compared so.'));
        return undefined;
    }
    const uri = given ?? current.fileFor();
    if (uri !== undefined) return uri;
    void vscode.window.showInformationMessage(vscode.l10n.t('Open a recipe (a .kerf file) to compare it.'));
    return undefined;
}

function resourceOf(place: unknown): vscode.Uri | undefined {
    // The title bar of a bench view or page hands over the address of its panel.
    if (place instanceof vscode.Uri) return place.scheme === 'webview-panel' ? undefined : place;
    if (typeof place !== 'object' || place === null || !('resourceUri' in place)) return undefined;
    return place.resourceUri instanceof vscode.Uri ? place.resourceUri : undefined;
}

function isRecipe(uri: unknown): uri is vscode.Uri {
    return uri instanceof vscode.Uri && mayHoldRecipes(uri);
}

/** A file, and the current recipe if that is one of its. */
function placeIn(uri: vscode.Uri, current: CurrentRecipe): { uri: string; recipe?: string } {
    const recipe = uri.toString() === current.uri ? current.recipe : undefined;
    return { uri: uri.toString(), ...(recipe === undefined ? {} : { recipe }) };
}
