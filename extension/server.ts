import * as vscode from 'vscode';
import { LanguageClient, type LanguageClientOptions, TransportKind } from 'vscode-languageclient/node';
import { method, type PlannedParams, type ReadAnswer } from '../shared/view/protocol';
import { readForServer } from './read-file';

/** Where recipes may lie; diffs and other views of old texts are left out, since they would declare every name twice. */
const schemes = ['file', 'untitled', 'vscode-remote', 'vscode-vfs', 'vscode-userdata', 'kerfbook-stock'];

const neverCancelled = new vscode.CancellationTokenSource().token;

/** The language server as the rest of the extension sees it. */
export class RecipeServer implements vscode.Disposable {
    private readonly client: LanguageClient;
    private readonly planned = new vscode.EventEmitter<PlannedParams>();
    /** A file has been planned anew. */
    readonly onDidPlan = this.planned.event;

    constructor(extensionUri: vscode.Uri) {
        const module = vscode.Uri.joinPath(extensionUri, 'dist', 'server.cjs').fsPath;
        const watchers = ['**/*.kerf', '**/*.{svg,png,jpg,jpeg}'].map((glob) => vscode.workspace.createFileSystemWatcher(glob));
        const options: LanguageClientOptions = {
            documentSelector: schemes.map((scheme) => ({ language: 'kerf', scheme })),
            synchronize: { fileEvents: watchers },
            outputChannelName: 'Kerfbook',
            markdown: { isTrusted: { enabledCommands: ['kerfbook.explainFinding'] } },
        };
        this.client = new LanguageClient(
            'kerfbook',
            'Kerfbook',
            { module, transport: TransportKind.ipc, options: { execArgv: ['--enable-source-maps'] } },
            options,
        );
        this.client.onNotification(method.planned, (params: PlannedParams) => this.planned.fire(params));
        this.client.onRequest<ReadAnswer, never>(method.read, readForServer);
    }

    start(): Promise<void> {
        return this.client.start();
    }

    restart(): Promise<void> {
        return this.client.restart();
    }

    /** The server's answer, or undefined when it has none or cannot be asked at present. */
    async ask<Answer>(what: string, params: object, token = neverCancelled): Promise<Answer | undefined> {
        try {
            await this.client.start();
            return (await this.client.sendRequest<Answer | null>(what, params, token)) ?? undefined;
        } catch (error) {
            if (!(error instanceof vscode.CancellationError)) this.client.warn(`${what}: ${error}`);
            return undefined;
        }
    }

    async dispose(): Promise<void> {
        this.planned.dispose();
        await this.client.dispose();
    }
}
