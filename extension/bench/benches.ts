import * as vscode from 'vscode';
import type { TickBook } from '../checklist/ticks';
import type { CurrentRecipe } from '../current-recipe';
import { movedTo } from '../moved-files';
import { isRecipeText } from '../recipe-place';
import type { RecipeServer } from '../server';
import { Bench } from './bench';
import { type KeptState, readKeptState } from './kept-state';
import { tabTitle } from './tab-title';

const VIEW_TYPE = 'kerfbook.bench';

/** Opens bench views, one a recipe file, and brings them back after a restart. */
export function watchBenches(
    server: RecipeServer,
    current: CurrentRecipe,
    book: TickBook,
    extensionUri: vscode.Uri,
): vscode.Disposable {
    const open = new Map<string, Bench>();

    /** One title more, or less, decides what the others have to say of themselves. */
    const retitle = () => {
        const shown = [...open].flatMap(([uri, bench]) =>
            bench.title === undefined ? [] : [{ uri, bench, title: bench.title }],
        );
        for (const { uri, bench, title } of shown) bench.panel.title = tabTitle(uri, title, shown);
    };

    const adopt = (panel: vscode.WebviewPanel, kept: KeptState) => {
        const bench = new Bench(panel, vscode.Uri.parse(kept.uri, true), server, current, book, extensionUri, kept);
        open.set(kept.uri, bench);
        bench.onDidTitle(retitle);
        panel.onDidDispose(() => {
            bench.dispose();
            for (const [uri, one] of open) if (one === bench) open.delete(uri);
            retitle();
        });
    };

    const moved = (files: vscode.FileRenameEvent['files']) => {
        for (const [uri, bench] of [...open]) {
            const now = movedTo(uri, files);
            if (now === uri) continue;
            open.delete(uri);
            // Where a file was moved over another one, the one bench view of both is enough.
            if (open.has(now)) {
                bench.panel.dispose();
                continue;
            }
            open.set(now, bench);
            bench.moveTo(vscode.Uri.parse(now, true));
        }
    };

    const show = (place: unknown, column: vscode.ViewColumn, recipe?: unknown) => {
        const uri = current.fileFor(place) ?? recipeInSight();
        if (uri === undefined) {
            void vscode.window.showInformationMessage(vscode.l10n.t('Open a recipe (a .kerf file) to see its bench view.'));
            return;
        }
        const shown = open.get(uri.toString());
        if (typeof recipe === 'string') current.choose({ uri: uri.toString(), recipe });
        if (shown !== undefined) {
            shown.panel.reveal(shown.panel.viewColumn, column === vscode.ViewColumn.Beside);
            return;
        }
        const where = { viewColumn: column, preserveFocus: column === vscode.ViewColumn.Beside };
        const name = uri.path.slice(uri.path.lastIndexOf('/') + 1);
        adopt(vscode.window.createWebviewPanel(VIEW_TYPE, vscode.l10n.t('Bench: {0}', name), where), {
            uri: uri.toString(),
            ...(typeof recipe === 'string' && { recipe }),
        });
    };

    return vscode.Disposable.from(
        vscode.workspace.onDidRenameFiles(({ files }) => moved(files)),
        vscode.commands.registerCommand('kerfbook.pressHalves', () => {
            const uri = current.fileFor();
            if (uri === undefined) return;
            const shown = open.get(uri.toString());
            if (shown === undefined) show(uri, vscode.ViewColumn.Beside);
            open.get(uri.toString())?.showPress();
        }),
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

function recipeInSight(): vscode.Uri | undefined {
    return vscode.window.visibleTextEditors.find(({ document }) => isRecipeText(document))?.document.uri;
}
