import * as vscode from 'vscode';
import type { CurrentRecipe } from '../current-recipe';
import { recipePlace } from '../recipe-place';
import type { RecipeServer } from '../server';
import { Bench } from './bench';
import { type KeptState, readKeptState } from './kept-state';

const VIEW_TYPE = 'kerfbook.bench';

/** Opens bench views, one a recipe file, and brings them back after a restart. */
export function watchBenches(server: RecipeServer, current: CurrentRecipe, extensionUri: vscode.Uri): vscode.Disposable {
    const open = new Map<string, Bench>();

    const adopt = (panel: vscode.WebviewPanel, kept: KeptState) => {
        const bench = new Bench(panel, vscode.Uri.parse(kept.uri, true), server, extensionUri, kept);
        open.set(kept.uri, bench);
        panel.onDidDispose(() => {
            bench.dispose();
            if (open.get(kept.uri) === bench) open.delete(kept.uri);
        });
    };

    const show = (place: unknown, column: vscode.ViewColumn, recipe?: unknown) => {
        const uri =
            recipePlace(place) ?? recipeInFront() ?? (current.uri === undefined ? undefined : vscode.Uri.parse(current.uri));
        if (uri === undefined) {
            void vscode.window.showInformationMessage('Open a recipe (a .kerf file) to see its bench view.');
            return;
        }
        const shown = open.get(uri.toString());
        if (shown !== undefined) {
            shown.panel.reveal(shown.panel.viewColumn, column === vscode.ViewColumn.Beside);
            return;
        }
        const where = { viewColumn: column, preserveFocus: column === vscode.ViewColumn.Beside };
        const name = uri.path.slice(uri.path.lastIndexOf('/') + 1);
        adopt(vscode.window.createWebviewPanel(VIEW_TYPE, `Bench: ${name}`, where), {
            uri: uri.toString(),
            ...(typeof recipe === 'string' && { recipe }),
        });
    };

    return vscode.Disposable.from(
        vscode.commands.registerCommand('kerfbook.openBenchView', (place, recipe) =>
            show(place, vscode.ViewColumn.Active, recipe),
        ),
        vscode.commands.registerCommand('kerfbook.openBenchViewToSide', (place, recipe) =>
            show(place, vscode.ViewColumn.Beside, recipe),
        ),
        vscode.window.registerWebviewPanelSerializer(VIEW_TYPE, {
            deserializeWebviewPanel: async (panel, state) => {
                const kept = readKeptState(state);
                if (kept === undefined) panel.dispose();
                else adopt(panel, kept);
            },
        }),
        new vscode.Disposable(() => {
            for (const bench of open.values()) bench.dispose();
        }),
    );
}

function recipeInFront(): vscode.Uri | undefined {
    const editors = [vscode.window.activeTextEditor, ...vscode.window.visibleTextEditors];
    return editors.find((editor) => editor?.document.languageId === 'kerfbook')?.document.uri;
}
