import * as vscode from 'vscode';
import { type BaseLanguageClient, type LanguageClientOptions, ProgressType } from 'vscode-languageclient';
import { method, type PlannedParams, type ReadAnswer } from '../shared/view/protocol';
import { readForServer } from './read-file';

/** Where recipes may lie; diffs and other views of old texts are left out, since they would declare every name twice. */
const schemes = ['file', 'untitled', 'vscode-remote', 'vscode-vfs', 'vscode-userdata', 'kerfbook-stock'];

const neverCancelled = new vscode.CancellationTokenSource().token;

/** The language server as the rest of the extension sees it. */
export class RecipeServer implements vscode.Disposable {
    private readonly client: BaseLanguageClient;
    private long = 0;
    private readonly planned = new vscode.EventEmitter<PlannedParams>();
    /** A file has been planned anew. */
    readonly onDidPlan = this.planned.event;

    constructor(connect: (options: LanguageClientOptions) => BaseLanguageClient) {
        const watchers = ['**/*.kerf', '**/*.{svg,png,jpg,jpeg}'].map((glob) => vscode.workspace.createFileSystemWatcher(glob));
        this.client = connect({
            documentSelector: schemes.map((scheme) => ({ language: 'kerfbook', scheme })),
            synchronize: { fileEvents: watchers },
            outputChannelName: 'Kerfbook',
            // The same as the problem matcher’s, so that what a task finds again is not shown twice.
            diagnosticCollectionName: 'kerfbook',
            initializationOptions: {
                commands: ['kerfbook.openBenchViewToSide', 'kerfbook.writeFiles'],
                // What the trade says comes when the plan is made, not when somebody asks.
                diagnostics: 'push',
            },
            markdown: { isTrusted: { enabledCommands: ['kerfbook.explainFinding'] } },
        });
        this.client.onNotification(method.planned, (params: PlannedParams) => this.planned.fire(params));
        this.client.onRequest<ReadAnswer, never>(method.read, readForServer);
    }

    start(): Promise<void> {
        return this.client.start();
    }

    async restart(): Promise<void> {
        await this.client.stop();
        await this.client.start();
    }

    /** The server's answer, or undefined when it has none or cannot be asked at present. */
    async ask<Answer>(what: string, params: object, token = neverCancelled): Promise<Answer | undefined> {
        return (await this.attempt<Answer>(what, params, token)).answer;
    }

    /** The same, for those who tell why there is no answer; nothing has failed where there is simply none. */
    async attempt<Answer>(
        what: string,
        params: object,
        token = neverCancelled,
    ): Promise<{ readonly answer?: Answer; readonly failed?: string }> {
        try {
            await this.client.start();
            const answer = await this.client.sendRequest<Answer | null>(what, params, token);
            return answer === null ? {} : { answer };
        } catch (error) {
            if (error instanceof vscode.CancellationError) return {};
            this.client.warn(`${what}: ${error}`);
            return { failed: error instanceof Error ? error.message : `${error}` };
        }
    }

    /** The same for what takes a while: `tell` hears the part that is done. */
    async askLong<Answer>(
        what: string,
        params: object,
        token: vscode.CancellationToken,
        tell: (part: number) => void,
    ): Promise<Answer | undefined> {
        const progress = `kerfbook ${++this.long}`;
        const listening = this.client.onProgress(new ProgressType<number>(), progress, tell);
        try {
            return await this.ask<Answer>(what, { ...params, progress }, token);
        } finally {
            listening.dispose();
        }
    }

    async dispose(): Promise<void> {
        this.planned.dispose();
        await this.client.dispose();
    }
}
