import * as vscode from 'vscode';
import type { Checklist, ChecklistItem } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import { revealPlace } from '../bench/reveal';
import type { CurrentRecipe } from '../current-recipe';
import { movedTo } from '../moved-files';
import type { RecipeServer } from '../server';
import { askMeasured } from './ask-measured';
import { finishRun } from './finish-run';
import { measureAndGoOn } from './measure-and-go-on';
import { takeInRun } from './take-in-run';
import { jobOf, placeOf, type TickBook } from './ticks';
import { ChecklistTree, type Node } from './tree';
import { announceWaits } from './waits';
import { WrittenRuns } from './written-runs';

/** The checklist view: the steps of the current recipe, ticked off at the bench, and in the end written down as a run. */
export function watchChecklist(server: RecipeServer, current: CurrentRecipe, book: TickBook): vscode.Disposable {
    const runs = new WrittenRuns(book);
    const tree = new ChecklistTree();
    const view = vscode.window.createTreeView('kerfbook.checklist', {
        treeDataProvider: tree,
        manageCheckboxStateManually: true,
    });

    const job = () =>
        current.uri === undefined || current.checklist === undefined ? '' : jobOf(current.uri, current.checklist.recipe);

    const draw = () => {
        const { checklist } = current;
        const ticks = book.of(job());
        const items = checklist?.items ?? [];
        const left = items.filter(({ id }) => ticks[id] === undefined).length;
        const begun = left < items.length;
        const done = begun ? vscode.l10n.t(': {0} of {1} steps done', items.length - left, items.length) : '';
        setContext('kerfbook.recipePinned', current.isPinned);
        view.message =
            checklist === undefined ? '' : vscode.l10n.t('{0}, issue {1}{2}', checklist.title, checklist.revision, done);
        view.badge = begun && left > 0 ? { value: left, tooltip: `${left} ${left === 1 ? 'step' : 'steps'} left` } : undefined;
        tree.show(job(), checklist, ticks);
        setContext('kerfbook.hasChecklist', checklist !== undefined);
        setContext('kerfbook.runBegun', begun);
        setContext('kerfbook.severalRecipes', current.recipes.length > 1);
    };

    const tick = async ({ items }: vscode.TreeCheckboxChangeEvent<Node>) => {
        const here = job();
        for (const [node, state] of items) {
            if (node.kind !== 'step') continue;
            if (state === vscode.TreeItemCheckboxState.Checked) await measureAndTick(here, node.item);
            else book.untick(here, node.item.id);
        }
        draw();
    };

    /** A check whose asking was broken off stays open. */
    const measureAndTick = async (here: string, item: ChecklistItem) => {
        const measured = await askMeasured(server, item);
        if (measured !== undefined) book.tick(here, item, Date.now(), measured);
        draw();
    };

    /** Ticks a step, or takes its tick away: for the keyboard and the menu. */
    const toggle = async (node: Node | undefined) => {
        let chosen = node;
        if (chosen === undefined) {
            // The arrow keys move the tree's focus, of which only its selection can be seen here.
            await vscode.commands.executeCommand('list.selectAndPreserveFocus');
            [chosen] = view.selection;
        }
        if (chosen?.kind !== 'step') return;
        const here = job();
        if (book.of(here)[chosen.item.id] === undefined) return measureAndTick(here, chosen.item);
        book.untick(here, chosen.item.id);
        draw();
    };

    const withSteps = async (work: (uri: string, checklist: Checklist) => Promise<void>) => {
        const checklist = await current.steps();
        const { uri } = current;
        if (uri !== undefined && checklist !== undefined) return work(uri, checklist);
        const none = vscode.l10n.t('The server knows no steps of a recipe at present. Open the recipe and try again.');
        void vscode.window.showInformationMessage(none);
    };
    const finish = () => withSteps((uri, checklist) => finishRun(server, book, runs, uri, checklist, draw));
    const takeIn = () => withSteps((uri, { recipe, title }) => takeInRun(server, uri, recipe, title));

    const reset = async () => {
        const { checklist } = current;
        const cleared = job();
        if (checklist === undefined || Object.keys(book.of(cleared)).length === 0) return;
        const question = vscode.l10n.t('Clear every tick and running wait of {0}?', checklist.title);
        if (
            (await vscode.window.showWarningMessage(question, { modal: true }, vscode.l10n.t('Clear'))) !== vscode.l10n.t('Clear')
        )
            return;
        book.reset(cleared);
        draw();
    };

    const choose = async () => {
        const { uri, recipes } = current;
        const recipe = await vscode.window.showQuickPick(recipes, { title: vscode.l10n.t('Which recipe are you at?') });
        if (uri !== undefined && recipe !== undefined) current.choose({ uri, recipe });
    };

    /** A wait may be longer or shorter than it was; while somebody types it, it is neither yet. */
    const adjust = async (uri: string) => {
        if (vscode.workspace.textDocuments.some((document) => document.isDirty && document.uri.toString() === uri)) return;
        for (const each of book.jobsOf(uri)) {
            const checklist = await server.ask(requests.checklist, placeOf(each));
            if (checklist !== undefined && book.adjust(each, checklist.items, Date.now())) draw();
        }
    };

    draw();
    return vscode.Disposable.from(
        view,
        current.onDidChange(draw),
        current.onDidChoose(draw),
        view.onDidChangeCheckboxState(tick),
        vscode.workspace.onDidChangeTextDocument(({ document, reason }) => {
            if (reason !== undefined && runs.changed(document.uri.toString(), document.getText())) draw();
        }),
        server.onDidPlan(({ uri }) => void adjust(uri)),
        vscode.workspace.onDidSaveTextDocument(({ uri }) => void adjust(uri.toString())),
        vscode.workspace.onDidRenameFiles(({ files }) => {
            const moved = (uri: string) => movedTo(uri, files);
            book.move(moved);
            runs.move(moved);
            draw();
        }),
        vscode.workspace.onDidDeleteFiles(({ files }) => {
            if (runs.filesChanged(files.map(String), false)) draw();
        }),
        vscode.workspace.onDidCreateFiles(({ files }) => {
            if (runs.filesChanged(files.map(String), true)) draw();
        }),
        announceWaits(
            book,
            (ended) => current.isThere(placeOf(ended)),
            () => tree.refreshWaits(book.of(job())),
            (ended) => {
                if (ended !== job()) current.choose(placeOf(ended));
                void vscode.commands.executeCommand('kerfbook.checklist.focus');
            },
        ),
        vscode.commands.registerCommand('kerfbook.tickStep', toggle),
        vscode.commands.registerCommand('kerfbook.resetChecklist', reset),
        vscode.commands.registerCommand('kerfbook.finishRun', finish),
        vscode.commands.registerCommand('kerfbook.takeInRun', takeIn),
        vscode.commands.registerCommand('kerfbook.measureStep', async (node: Node | undefined) => {
            if (node?.kind === 'step') await measureAndTick(job(), node.item);
        }),
        vscode.commands.registerCommand('kerfbook.measureAndGoOn', async (node: Node | undefined) => {
            if (node?.kind === 'step') await measureAndGoOn(server, node.item);
        }),
        vscode.commands.registerCommand('kerfbook.chooseRecipe', choose),
        vscode.commands.registerCommand('kerfbook.pinRecipe', () => current.pin(true)),
        vscode.commands.registerCommand('kerfbook.unpinRecipe', () => current.pin(false)),
        vscode.commands.registerCommand('kerfbook.goToStep', async (node: Node | undefined) => {
            if (node?.kind === 'step') await revealPlace(node.item.where, false, undefined);
        }),
    );
}

function setContext(key: string, value: boolean): void {
    void vscode.commands.executeCommand('setContext', key, value);
}
