import * as vscode from 'vscode';
import { escapeMarkup } from '../../shared/sheets/escape';
import { command, type PageAnswer } from '../../shared/view/protocol';
import type { RecipeServer } from '../server';
import { serverPage } from './server-page';
import { RevisionWatch } from './watch-revisions';

/** What a panel shows: a page that the server makes of a recipe file. */
export interface PageQuestion {
    readonly method: string;
    readonly params: { readonly uri: string } & Readonly<Record<string, unknown>>;
    /** What the panel is called until the server has said it. */
    readonly title: (name: string) => string;
    /** What is being done meanwhile. */
    readonly doing: string;
    /** Files of which a change makes the page anew. */
    readonly watched: readonly string[] | 'every file';
    /** Whether git is asked for earlier versions: then a new commit makes the page anew too. */
    readonly ofRevisions: boolean;
}

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

    constructor(
        readonly panel: vscode.WebviewPanel,
        private question: PageQuestion,
        private readonly server: RecipeServer,
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
        );
        if (question.ofRevisions) {
            this.revisions = new RevisionWatch(server, question.params.uri, () => this.later());
            this.subscriptions.push(this.revisions);
        }
        const doing = escapeMarkup(question.doing);
        this.show(`<p>${doing} …</p><p><a href="command:kerfbook.stopPage">Stop</a></p>`);
        void this.refresh();
    }

    /** The same page for another place. */
    ask(question: PageQuestion): Promise<void> {
        this.question = question;
        return this.refresh();
    }

    /** Makes the page anew, whatever was being made. */
    async refresh(): Promise<void> {
        this.outdated = false;
        this.asking?.cancel();
        const source = new vscode.CancellationTokenSource();
        this.asking = source;
        void this.revisions?.begin();
        const { method, params, title } = this.question;
        const answer = await this.server.ask<PageAnswer>(method, params, source.token);
        source.dispose();
        if (this.asking !== source) return; // a newer question is on its way
        this.asking = undefined;
        if (answer === undefined) this.sorry('This was stopped, or the server could not say.');
        else if ('problem' in answer) this.sorry(answer.problem);
        else {
            this.panel.title = title(answer.title);
            this.show(answer.body);
        }
    }

    stop(): void {
        this.asking?.cancel();
    }

    private concerns(uri: string): boolean {
        const { watched } = this.question;
        return watched === 'every file' || watched.includes(uri);
    }

    private later(): void {
        this.outdated = true;
        if (!this.panel.visible) return;
        clearTimeout(this.timer);
        this.timer = setTimeout(() => void this.refresh(), pause);
    }

    private sorry(why: string): void {
        this.show(`<p class="sorry">${escapeMarkup(why)}</p><p><a href="command:kerfbook.refreshPage">Try again</a></p>`);
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
