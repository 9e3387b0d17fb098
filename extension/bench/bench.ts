import * as vscode from 'vscode';
import type { PictureParams } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { SentPicture } from '../../shared/view/sent-picture';
import { jobOf, type TickBook } from '../checklist/ticks';
import type { CurrentRecipe } from '../current-recipe';
import type { RecipeServer } from '../server';
import { fixFinding } from './fix-finding';
import type { KeptState } from './kept-state';
import { type BenchCommand, type BenchTicks, benchCommands, type FromBench, readFromBench, type ToBench } from './messages';
import { benchPage } from './page';
import { PageParts } from './page-parts';
import { revealPlace, revealText } from './reveal';
import { savePage, savePicture } from './save-picture';
import { writeNumber } from './write-number';

/** One bench view: a panel about one recipe file, of which it shows the current recipe. It asks for pictures and passes them on; it works nothing out itself. */
export class Bench implements vscode.Disposable {
    private readonly subscriptions: vscode.Disposable[] = [];
    private recipe: string | undefined;
    private asking = false;
    private outdated = false;
    /** Version of the text that a picture has been asked for though its plan is not there yet. */
    private ahead: number | undefined;
    /** The last picture came before the fixes of its findings had been tried. */
    private unfinished = false;
    private readonly dist: vscode.Uri;
    private readonly parts = new PageParts();
    private disposed = false;
    private pressing: vscode.CancellationTokenSource | undefined;
    /** The recipe in the picture that was sent last. */
    private shown: string | undefined;
    private hasInlay = false;
    /** Of the recipe in the last picture. */
    title: string | undefined;
    private readonly titled = new vscode.EventEmitter<void>();
    /** The title has come, or may have changed. */
    readonly onDidTitle = this.titled.event;

    constructor(
        readonly panel: vscode.WebviewPanel,
        private uri: vscode.Uri,
        private readonly server: RecipeServer,
        private readonly current: CurrentRecipe,
        private readonly book: TickBook,
        extensionUri: vscode.Uri,
        kept: KeptState,
    ) {
        this.recipe = (current.uri === uri.toString() ? current.recipe : undefined) ?? kept.recipe;
        const dist = vscode.Uri.joinPath(extensionUri, 'dist');
        this.dist = dist;
        panel.iconPath = vscode.Uri.joinPath(extensionUri, 'extension', 'icons', 'bench-tab.svg');
        panel.webview.options = { enableScripts: true, enableForms: false, enableCommandUris: false, localResourceRoots: [dist] };
        this.subscriptions.push(
            this.titled,
            panel.webview.onDidReceiveMessage((message) => this.receive(readFromBench(message))),
            // The question waits in the server until the new text is read: quicker than to wait for the news that it is.
            vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
                if (contentChanges.length === 0 || document.uri.toString() !== this.uri.toString()) return;
                this.ahead = document.version;
                void this.refresh();
            }),
            server.onDidPlan((params) => {
                if (params.uri === this.uri.toString()) this.planned(params.textVersion);
            }),
            current.onDidChoose(() => this.followCurrent()),
            book.onDidChange(() => this.tellRun()),
            panel.onDidChangeViewState(() => {
                if (!panel.active) return;
                this.beCurrent();
                void vscode.commands.executeCommand('setContext', 'kerfbook.hasInlay', this.hasInlay);
            }),
            // A selection of no kind is the editor's own, as when it brings a text back: nobody has moved there.
            vscode.window.onDidChangeTextEditorSelection(({ textEditor, kind }) =>
                this.followCursor(textEditor, kind !== undefined),
            ),
        );
        panel.webview.html = benchPage(panel.webview, dist, kept);
    }

    /** Art or stock may have changed under the same text; the first plan of a new text says nothing that has not been asked for. */
    private planned(textVersion: number): void {
        const known = this.ahead === textVersion && this.panel.visible && !this.unfinished;
        this.ahead = undefined;
        if (!known) void this.refresh();
    }

    /** Asks for the picture anew. One question at a time: a change meanwhile asks once more when the answer is there. */
    private async refresh(): Promise<void> {
        this.outdated = true;
        if (this.disposed || this.asking || !this.panel.visible) return;
        this.asking = true;
        while (this.outdated) {
            this.outdated = false;
            const had = this.parts.names;
            const params: PictureParams = {
                uri: this.uri.toString(),
                ...(this.recipe === undefined ? {} : { recipe: this.recipe }),
                had,
                // Before the first picture, and while somebody types, nothing is waited for.
                soon: this.ahead !== undefined || had.length === 0,
            };
            const { answer: view, failed } = await this.server.attempt(requests.bench, params);
            if (this.disposed) return;
            if (view === undefined) {
                const why =
                    failed === undefined
                        ? vscode.l10n.t('This file holds no recipe that can be shown.')
                        : vscode.l10n.t('It could not be worked out: {0}', failed);
                this.post({ type: 'nothing', why });
            } else {
                this.show(view, had.length);
            }
        }
        this.asking = false;
    }

    /** @param had how many parts were left out, since the page has them */
    private show(view: SentPicture, had: number): void {
        this.title = view.title;
        this.titled.fire();
        if (this.shown !== view.recipe) {
            this.shown = view.recipe;
            this.tellRun();
        }
        this.tellInlay(view.inlays.length > 0);
        // A page that came up meanwhile has nothing of what was left out.
        if (had > 0 && this.parts.names.length === 0) {
            this.outdated = true;
            return;
        }
        this.parts.sent(view);
        this.unfinished = view.more === true || view.findings.some(({ trying }) => trying === true);
        // The text has been planned already: nothing else would have it finished.
        if (this.unfinished && this.ahead === undefined) this.outdated = true;
        this.post({ type: 'picture', view });
    }

    private receive(message: FromBench | undefined): void {
        switch (message?.type) {
            case 'ready':
                this.parts.clear();
                this.shown = undefined;
                // The frame that was chosen before the page was last closed stays chosen.
                void this.refresh().then(() => this.followCursor(vscode.window.activeTextEditor, false));
                break;
            case 'recipe':
                this.choose(message.name);
                break;
            case 'reveal':
                void revealPlace(message.where, message.focus, this.panel.viewColumn).catch((error) =>
                    vscode.window.showErrorMessage(`${error}`),
                );
                break;
            case 'explain':
                void vscode.commands.executeCommand('kerfbook.explainFinding', message.rule);
                break;
            case 'fix':
                void fixFinding(message.fix, message.where);
                break;
            case 'command':
                void this.command(message.name);
                break;
            case 'toolpath':
                void this.toolpath(message.step);
                break;
            case 'write':
                void writeNumber(this.server, this.uri, message).then((why) => {
                    if (why !== undefined) this.post({ type: 'refused', why });
                });
                break;
            case 'press':
                void this.press(message);
                break;
            case 'stop-press':
                this.pressing?.cancel();
                break;
            case 'column':
                void this.column(message);
                break;
            case 'section':
                void this.section(message);
                break;
            case 'round':
                void this.round(message);
                break;
            case 'save-picture':
                void savePicture(this.uri, message.name, message.png);
                break;
            case 'save-page':
                void savePage(this.uri, this.dist, message.name, this.title ?? message.name, message.body);
                break;
        }
    }

    /** Shows another recipe of its file, which becomes the current one. */
    choose(recipe: string): void {
        this.current.choose({ uri: this.uri.toString(), recipe });
        this.followCurrent();
    }

    /** The bench view that a person turns to is about the current recipe, unless another one is pinned. */
    private beCurrent(): void {
        const recipe = this.recipe ?? this.shown;
        if (this.current.isPinned || (recipe === undefined && this.current.uri === this.uri.toString())) return;
        this.current.choose({ uri: this.uri.toString(), ...(recipe === undefined ? {} : { recipe }) });
    }

    /** The text takes back what was done here, since that is where it was written. */
    private async command(name: BenchCommand): Promise<void> {
        if (name !== 'undo' && name !== 'redo') {
            await vscode.commands.executeCommand(benchCommands[name]);
            return;
        }
        const { uri } = this;
        await revealText(uri, this.panel.viewColumn);
        await vscode.commands.executeCommand(benchCommands[name]);
        this.panel.reveal(this.panel.viewColumn);
    }

    private tellRun(): void {
        if (this.shown === undefined) return;
        const ticks = Object.entries(this.book.of(jobOf(this.uri.toString(), this.shown)));
        const told = ticks.map(([id, { ends }]): [string, BenchTicks[string]] => [id, ends === undefined ? {} : { ends }]);
        this.post({ type: 'run', ticks: Object.fromEntries(told) });
    }

    /** Menus ask whether there are halves to press. */
    private tellInlay(hasInlay: boolean): void {
        if (hasInlay === this.hasInlay) return;
        this.hasInlay = hasInlay;
        if (this.panel.active || this.current.uri === this.uri.toString())
            void vscode.commands.executeCommand('setContext', 'kerfbook.hasInlay', hasInlay);
    }

    private followCurrent(): void {
        const { uri, recipe } = this.current;
        if (uri !== this.uri.toString() || recipe === undefined || recipe === this.recipe) return;
        this.recipe = recipe;
        void this.refresh();
    }

    /** Its file lies elsewhere now. */
    moveTo(uri: vscode.Uri): void {
        this.uri = uri;
        this.ahead = undefined;
        this.post({ type: 'moved', uri: uri.toString() });
        void this.refresh();
    }

    /** Shows the halves of the first inlay pressed together. */
    showPress(): void {
        this.panel.reveal(this.panel.viewColumn);
        this.post({ type: 'show-press' });
    }

    private async section({ ticket, frame, blank, y }: Extract<FromBench, { type: 'section' }>): Promise<void> {
        const params = {
            uri: this.uri.toString(),
            ...(this.recipe === undefined ? {} : { recipe: this.recipe }),
            frame,
            blank,
            y,
        };
        const section = await this.server.ask(requests.section, params);
        this.post({ type: 'section', ticket, section: section ?? null });
    }

    private async round({ ticket, frame, blank, hidden }: Extract<FromBench, { type: 'round' }>): Promise<void> {
        const params = {
            uri: this.uri.toString(),
            ...(this.recipe === undefined ? {} : { recipe: this.recipe }),
            frame,
            blank,
            hidden,
        };
        const round = await this.server.ask(requests.round, params);
        this.post({ type: 'round', ticket, round: round ?? null });
    }

    private async column({ ticket, frame, blank, x, y }: Extract<FromBench, { type: 'column' }>): Promise<void> {
        const params = {
            uri: this.uri.toString(),
            ...(this.recipe === undefined ? {} : { recipe: this.recipe }),
            frame,
            blank,
            x,
            y,
        };
        const words = await this.server.ask(requests.column, params);
        this.post({ type: 'column', ticket, words: words ?? null });
    }

    private async toolpath(step: number): Promise<void> {
        const params = { uri: this.uri.toString(), ...(this.recipe === undefined ? {} : { recipe: this.recipe }), step };
        const toolpath = await this.server.ask(requests.toolpath, params);
        this.post({ type: 'toolpath', toolpath: toolpath ?? null });
    }

    /** One press at a time: a newer wish stops the one before it. */
    private async press({ ticket, step }: Extract<FromBench, { type: 'press' }>): Promise<void> {
        this.pressing?.cancel();
        const source = new vscode.CancellationTokenSource();
        this.pressing = source;
        const params = { uri: this.uri.toString(), ...(this.recipe === undefined ? {} : { recipe: this.recipe }), step };
        const press = await this.server.askLong(requests.press, params, source.token, (part) =>
            this.post({ type: 'pressing', ticket, part }),
        );
        this.post({ type: 'pressed', ticket, press: press ?? null });
        if (this.pressing === source) this.pressing = undefined;
        source.dispose();
    }

    private followCursor(editor: vscode.TextEditor | undefined, moved: boolean): void {
        if (editor?.document.uri.toString() !== this.uri.toString()) return;
        const follow = vscode.workspace.getConfiguration('kerfbook.benchView', this.uri).get('followCursor', true);
        const { active } = editor.selection;
        // Before the first word of a line the cursor belongs to what the line begins.
        const first = editor.document.lineAt(active.line).firstNonWhitespaceCharacterIndex;
        const offset = editor.document.offsetAt(active.with({ character: Math.max(active.character, first) }));
        // In another recipe of the file no step of this one is under the cursor.
        const isHere = this.current.recipeHere(this.uri.toString(), offset) === this.shown || this.shown === undefined;
        this.post({ type: 'cursor', offset: isHere ? offset : 0, turn: moved && follow && isHere });
    }

    private post(message: ToBench): void {
        if (this.disposed) return;
        void this.panel.webview.postMessage(message);
    }

    dispose(): void {
        this.disposed = true;
        this.pressing?.cancel();
        for (const each of this.subscriptions) each.dispose();
    }
}
