import * as vscode from 'vscode';
import { command } from '../../shared/view/protocol';
import { revealPlace } from '../bench/reveal';
import { readPlace } from '../read-place';
import type { RecipeServer } from '../server';
import { mayStartGit } from '../write/trust';
import { chooseRevision } from './choose-revision';
import { Pages } from './pages';

/** The commands that set recipes beside each other. */
export function offerReviews(server: RecipeServer, memory: vscode.Memento): vscode.Disposable {
    const pages = new Pages(server, memory);
    // Source control says nothing of the kind of its files, so its menus ask whether there are recipes at all.
    void vscode.commands.executeCommand('setContext', 'kerfbook.active', true);
    const on = (name: string, work: (place: unknown, all: unknown) => unknown): vscode.Disposable =>
        vscode.commands.registerCommand(name, work);
    return vscode.Disposable.from(
        pages,
        on('kerfbook.compareWithCommitted', (place) => {
            const uri = recipeOf(place);
            if (uri !== undefined && mayStartGit()) pages.show({ kind: 'compare', uri: uri.toString() });
        }),
        on('kerfbook.compareWithRevision', async (place) => {
            const uri = recipeOf(place);
            const revision = uri && mayStartGit() && (await chooseRevision(server, uri));
            if (uri !== undefined && typeof revision === 'string') pages.show({ kind: 'compare', uri: uri.toString(), revision });
        }),
        on('kerfbook.compareSelected', (_place, all) => {
            const [before, after] = (Array.isArray(all) ? all : []).filter(isRecipe);
            if (before === undefined || after === undefined) {
                void vscode.window.showInformationMessage('Select two recipe files (.kerf) in the explorer to compare them.');
            } else pages.show({ kind: 'compare', uri: after.toString(), before: before.toString() });
        }),
        on('kerfbook.compareVariants', (place) => {
            const uri = recipeOf(place);
            if (uri !== undefined) pages.show({ kind: 'variants', ...placeIn(uri) });
        }),
        on('kerfbook.showHistory', (place) => {
            const uri = recipeOf(place);
            if (uri !== undefined) pages.show({ kind: 'history', ...placeIn(uri) });
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
function recipeOf(place: unknown): vscode.Uri | undefined {
    const given = resourceOf(place);
    if (given !== undefined && !isRecipe(given)) {
        void vscode.window.showInformationMessage('Only recipe files (.kerf) can be compared so.');
        return undefined;
    }
    const uri = given ?? vscode.window.activeTextEditor?.document.uri;
    if (uri !== undefined && isRecipe(uri)) return uri;
    void vscode.window.showInformationMessage('Open a recipe (a .kerf file) to compare it.');
    return undefined;
}

function resourceOf(place: unknown): vscode.Uri | undefined {
    if (place instanceof vscode.Uri) return place;
    if (typeof place !== 'object' || place === null || !('resourceUri' in place)) return undefined;
    return place.resourceUri instanceof vscode.Uri ? place.resourceUri : undefined;
}

function isRecipe(uri: unknown): uri is vscode.Uri {
    return uri instanceof vscode.Uri && uri.path.endsWith('.kerf');
}

/** A file, and where the cursor is in it if it is in front. */
function placeIn(uri: vscode.Uri): { uri: string; offset?: number } {
    const editor = vscode.window.activeTextEditor;
    const here = editor?.document.uri.toString() === uri.toString();
    return { uri: uri.toString(), ...(here && { offset: editor.document.offsetAt(editor.selection.active) }) };
}
