import * as vscode from 'vscode';
import { type Checklist, method } from '../../shared/view/protocol';
import { revealPlace } from '../bench/reveal';
import type { CurrentRecipe } from '../current-recipe';
import type { RecipeServer } from '../server';
import { jobOf, TickBook } from './ticks';
import { ChecklistTree, type Node } from './tree';
import { announceWaits } from './waits';

/** The checklist view: the steps of the current recipe, ticked off at the bench. */
export function watchChecklist(server: RecipeServer, current: CurrentRecipe, memory: vscode.Memento): vscode.Disposable {
    const book = new TickBook(memory);
    const tree = new ChecklistTree();
    const view = vscode.window.createTreeView('kerfbook.checklist', {
        treeDataProvider: tree,
        manageCheckboxStateManually: true,
    });
    let shown: Checklist | undefined;
    let job = '';
    let asked = 0;

    const draw = () => {
        const ticks = book.of(job);
        tree.show(job, shown, ticks);
        const items = shown?.items ?? [];
        const left = items.filter(({ id }) => ticks[id] === undefined).length;
        const begun = left < items.length;
        const done = begun ? `: ${items.length - left} of ${items.length} steps done` : '';
        view.message = shown === undefined ? '' : `${shown.title}, revision ${shown.revision}${done}`;
        view.badge = begun && left > 0 ? { value: left, tooltip: `${left} steps left` } : undefined;
    };

    const refresh = async () => {
        const place = current.place;
        const ticket = ++asked;
        const params = { uri: place?.uri ?? '', ...(current.name === undefined ? {} : { recipe: current.name }) };
        const answer = place === undefined ? undefined : await server.ask<Checklist>(method.checklist, params);
        if (ticket !== asked) return; // a newer question is on its way
        shown = answer;
        job = place === undefined || answer === undefined ? '' : jobOf(place.uri, answer.recipe);
        void vscode.commands.executeCommand('setContext', 'kerfbook.hasChecklist', answer !== undefined);
        void vscode.commands.executeCommand('setContext', 'kerfbook.severalRecipes', (current.summary?.recipes.length ?? 0) > 1);
        draw();
    };

    void refresh();
    return vscode.Disposable.from(
        view,
        current.onDidChange(() => void refresh()),
        view.onDidChangeCheckboxState(({ items }) => {
            for (const [node, state] of items) {
                if (node.kind !== 'step') continue;
                if (state === vscode.TreeItemCheckboxState.Checked) book.tick(job, node.item, Date.now());
                else book.untick(job, node.item.id);
            }
            draw();
        }),
        announceWaits(book, () => tree.refreshWaits(book.of(job))),
        vscode.commands.registerCommand('kerfbook.goToStep', async (node: Node | undefined) => {
            if (node?.kind === 'step') await revealPlace(node.item.where, false, undefined);
        }),
        vscode.commands.registerCommand('kerfbook.resetChecklist', async () => {
            if (shown === undefined || Object.keys(book.of(job)).length === 0) return;
            const question = `Clear every tick and running wait of ${shown.title}?`;
            if ((await vscode.window.showWarningMessage(question, { modal: true }, 'Clear')) !== 'Clear') return;
            book.reset(job);
            draw();
        }),
        vscode.commands.registerCommand('kerfbook.chooseRecipe', async () => {
            const place = current.place;
            if (place === undefined) return;
            const names = current.summary?.recipes ?? [];
            const recipe = await vscode.window.showQuickPick(names, { title: 'Show the checklist of which recipe?' });
            if (recipe !== undefined) current.choose({ uri: place.uri, recipe });
        }),
    );
}
