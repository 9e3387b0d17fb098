import * as vscode from 'vscode';
import { escapeMarkup } from '../../shared/sheets/escape';
import { command } from '../../shared/view/protocol';
import type { RecipeServer } from '../server';
import { whyNoGit } from '../write/trust';
import { type AskedPage, startsGit } from './asked-page';
import { questionOf } from './page-question';
import { serverPage } from './server-page';
import { RevisionWatch } from './watch-revisions';

/** The view's type, by which menus know it. */
export const PAGE_VIEW = 'kerfbook.page';

/** Quiet after the last change before the page is made anew, ms. */
const pause = 250;

/** A panel with a page of the server's, made anew whenever one of its files has been planned anew or what git knows of them has changed. */
export class PagePanel implements vscode.Disposable {
    private readonly subscriptions: vscode.Disposable[] = [];
    private asking: vscode.CancellationTokenSource | undefined;
    private timer: ReturnType<typeof setTimeout> | undefined;
    private readonly revisions: RevisionWatch | undefined;
    private outdated = false;
    private shown: string | undefined;
    /** What was shown last of a text that could be read as a whole: it stays while the text is broken. */
    private whole: string | undefined;

    /** @param onAnswer called when it is known whom the page is about */
    constructor(
        readonly panel: vscode.WebviewPanel,
        private about: AskedPage,
        private readonly server: RecipeServer,
        private readonly onAnswer: () => void,
    ) {
        panel.webview.options = {
            enableScripts: false,
            enableForms: false,
            enableCommandUris: [command.goToPlace, command.explain, 'kerfbook.stopPage', 'kerfbook.refreshPage'],
            localResourceRoots: [],
        };
        this.subscriptions.push(
            server.onDidPlan(({ uri }) => {
                if (this.concerns(uri)) this.later();
            }),
            panel.onDidChangeViewState(() => {
                if (panel.visible && this.outdated) this.later();
            }),
            vscode.workspace.onDidGrantWorkspaceTrust(() => this.later()),
        );
        const { doing, ofRevisions } = questionOf(about);
        if (ofRevisions) {
            this.revisions = new RevisionWatch(
                server,
                about.uri,
                () => this.later(),
                () => panel.visible,
            );
            this.subscriptions.push(this.revisions);
        }
        this.show(`<p>${escapeMarkup(doing)} …</p><p>${linkTo('stopPage', vscode.l10n.t('Stop'))}</p>`);
        void this.refresh();
    }

    get asked(): AskedPage {
        return this.about;
    }

    /** The same page for another place. */
    ask(asked: AskedPage): Promise<void> {
        this.about = asked;
        this.whole = undefined;
        return this.refresh();
    }

    /** Makes the page anew, whatever was being made. */
    async refresh(): Promise<void> {
        this.outdated = false;
        this.asking?.cancel();
        // A page that the editor brings back asks for itself.
        const why = startsGit(this.about) ? whyNoGit() : undefined;
        if (why !== undefined) {
            this.sorry(why);
            return;
        }
        const source = new vscode.CancellationTokenSource();
        this.asking = source;
        void this.revisions?.begin();
        const { ask, title } = questionOf(this.about);
        const answer = await ask(this.server, source.token);
        source.dispose();
        if (this.asking !== source) return; // a newer question is on its way
        this.asking = undefined;
        if (answer === undefined) this.sorry(vscode.l10n.t('This was stopped, or the server could not say.'));
        else if (answer.broken !== undefined && this.whole !== undefined) this.show(`${brokenWords(answer.broken)}${this.whole}`);
        else if ('problem' in answer) this.sorry(answer.problem, answer.final !== true);
        else {
            this.panel.title = title(answer.title);
            // The place where it was asked moves with the text; the name stays.
            if ((this.about.kind === 'variants' || this.about.kind === 'history') && answer.recipe !== undefined)
                this.about = { kind: this.about.kind, uri: this.about.uri, recipe: answer.recipe };
            if (answer.broken === undefined) this.whole = answer.body;
            this.show(answer.broken === undefined ? answer.body : `${brokenWords(answer.broken)}${answer.body}`);
            this.onAnswer();
        }
    }

    stop(): void {
        this.asking?.cancel();
    }

    private concerns(uri: string): boolean {
        const { watched } = questionOf(this.about);
        return watched === 'every file' || watched.includes(uri);
    }

    private later(): void {
        this.outdated = true;
        if (!this.panel.visible) return;
        clearTimeout(this.timer);
        this.timer = setTimeout(() => void this.refresh(), pause);
    }

    /** @param again whether asking again may help */
    private sorry(why: string, again = true): void {
        const offer = again ? `<p>${linkTo('refreshPage', vscode.l10n.t('Try again'))}</p>` : '';
        this.show(`<p class="sorry">${escapeMarkup(why)}</p>${offer}`);
    }

    /** The editor keeps the place to which the page was scrolled; what says the same is left as it is. */
    private show(body: string): void {
        if (body === this.shown) return;
        this.shown = body;
        this.panel.webview.html = serverPage(this.panel.title, body);
    }

    dispose(): void {
        clearTimeout(this.timer);
        this.asking?.cancel();
        this.asking = undefined;
        for (const each of this.subscriptions) each.dispose();
    }
}

function brokenWords(why: string): string {
    return `<p class="sorry">${escapeMarkup(vscode.l10n.t('The text cannot be read as a whole at present: {0}', why))}</p>`;
}

function linkTo(command: string, words: string): string {
    return `<a href="command:kerfbook.${command}">${escapeMarkup(words)}</a>`;
}
