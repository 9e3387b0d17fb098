import * as vscode from 'vscode';
import {
    type BaseLanguageClient,
    CloseAction,
    type CloseHandlerResult,
    ErrorAction,
    type LanguageClientOptions,
    ProgressType,
} from 'vscode-languageclient';
import type { ListAnswer, LookAnswer, PlannedParams, ReadAnswer } from '../shared/view/protocol';
import { editorRequests, notifications, type Request } from '../shared/view/requests';
import { listForServer, readForServer } from './read-file';
import { ServerCrashes } from './server-crashes';
import { lookForServer, putForServer, removeForServer } from './write/write-for-server';

/** Where recipes may lie; diffs and other views of old texts are left out, since they would declare every name twice. */
const schemes = ['file', 'untitled', 'vscode-remote', 'vscode-vfs', 'vscode-userdata', 'kerfbook-stock'];

const whyDown = vscode.l10n.t(
    'The Kerfbook language server stopped five times within three minutes and stays down: recipes are not checked. Restart it; the output says why it stopped.',
);

const neverCancelled = new vscode.CancellationTokenSource().token;

/** The language server as the rest of the extension sees it. */
export class RecipeServer implements vscode.Disposable {
    private readonly client: BaseLanguageClient;
    private long = 0;
    private readonly crashes = new ServerCrashes();
    private down = false;
    private readonly downChanged = new vscode.EventEmitter<void>();
    /** It has gone down, or come up again. */
    readonly onDidChangeDown = this.downChanged.event;
    private readonly planned = new vscode.EventEmitter<PlannedParams>();
    /** A file has been planned anew. */
    readonly onDidPlan = this.planned.event;

    constructor(connect: (options: LanguageClientOptions) => BaseLanguageClient) {
        this.client = connect({
            documentSelector: schemes.map((scheme) => ({ language: 'kerfbook', scheme })),
            outputChannelName: 'Kerfbook',
            errorHandler: {
                error: (_error, _message, count = 0) => ({ action: count <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown }),
                closed: () => this.died(),
            },
            // The same as the problem matcher’s, so that what a task finds again is not shown twice.
            diagnosticCollectionName: 'kerfbook',
            initializationOptions: {
                commands: ['kerfbook.openBenchViewToSide', 'kerfbook.writeFiles', 'kerfbook.openManual'],
                // What the trade says comes when the plan is made, not when somebody asks.
                diagnostics: 'push',
            },
            markdown: { isTrusted: { enabledCommands: ['kerfbook.explainFinding', 'kerfbook.openManual'] } },
        });
        this.client.onNotification(notifications.planned.method, (params: PlannedParams) => this.planned.fire(params));
        this.client.onRequest<ReadAnswer, never>(editorRequests.read.method, readForServer);
        this.client.onRequest<ListAnswer, never>(editorRequests.list.method, listForServer);
        this.client.onRequest<LookAnswer, never>(editorRequests.look.method, lookForServer);
        this.client.onRequest<string | null, never>(editorRequests.put.method, putForServer);
        this.client.onRequest<string | null, never>(editorRequests.remove.method, removeForServer);
    }

    start(): Promise<void> {
        return this.client.start();
    }

    /** Whether it has died so often that it stays down until somebody restarts it. */
    get isDown(): boolean {
        return this.down;
    }

    async restart(): Promise<void> {
        this.crashes.forget();
        if (this.client.isRunning()) await this.client.stop();
        this.setDown(false);
        await this.client.start();
    }

    private died(): CloseHandlerResult {
        if (this.crashes.isWorthRestarting(Date.now())) return { action: CloseAction.Restart, handled: true };
        this.setDown(true);
        void vscode.window.showErrorMessage(whyDown, vscode.l10n.t('Restart'), vscode.l10n.t('Show Output')).then((chosen) => {
            if (chosen === vscode.l10n.t('Restart')) void this.restart();
            else if (chosen === vscode.l10n.t('Show Output')) this.client.outputChannel.show();
        });
        return { action: CloseAction.DoNotRestart, handled: true };
    }

    private setDown(down: boolean): void {
        if (this.down === down) return;
        this.down = down;
        this.downChanged.fire();
    }

    /** The server's answer, or undefined when it has none or cannot be asked at present. */
    async ask<Params extends object, Answer>(
        what: Request<Params, Answer>,
        params: NoInfer<Params>,
        token = neverCancelled,
    ): Promise<Exclude<Answer, null> | undefined> {
        return (await this.attempt(what, params, token)).answer;
    }

    /** The same, for those who tell why there is no answer; nothing has failed where there is simply none. */
    async attempt<Params extends object, Answer>(
        { method }: Request<Params, Answer>,
        params: NoInfer<Params>,
        token = neverCancelled,
    ): Promise<{ readonly answer?: Exclude<Answer, null>; readonly failed?: string }> {
        // Asking would start it again, behind the back of whoever was told that it is down.
        if (this.down) return { failed: whyDown };
        try {
            await this.client.start();
            const answer = await this.client.sendRequest<Exclude<Answer, null> | null>(method, params, token);
            return answer === null ? {} : { answer };
        } catch (error) {
            if (error instanceof vscode.CancellationError) return {};
            this.client.warn(`${method}: ${error}`);
            return { failed: error instanceof Error ? error.message : `${error}` };
        }
    }

    /** The same for what takes a while: `tell` hears the part that is done. */
    async askLong<Params extends { readonly progress?: string | number }, Answer>(
        what: Request<Params, Answer>,
        params: NoInfer<Params>,
        token: vscode.CancellationToken,
        tell: (part: number) => void,
    ): Promise<Exclude<Answer, null> | undefined> {
        const progress = `kerfbook ${++this.long}`;
        const listening = this.client.onProgress(new ProgressType<number>(), progress, tell);
        try {
            return await this.ask(what, { ...params, progress }, token);
        } finally {
            listening.dispose();
        }
    }

    async dispose(): Promise<void> {
        this.planned.dispose();
        this.downChanged.dispose();
        await this.client.dispose();
    }
}
