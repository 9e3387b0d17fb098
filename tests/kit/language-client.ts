import { PassThrough, type Readable, type Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import {
    createConnection,
    createProtocolConnection,
    type Diagnostic,
    type InitializeResult,
    type ProtocolConnection,
    type PublishDiagnosticsParams,
    StreamMessageReader,
    StreamMessageWriter,
    type TextDocumentClientCapabilities,
    type WindowClientCapabilities,
    type WorkspaceClientCapabilities,
} from 'vscode-languageserver/node';
import { LocalAsker } from '../../server/engine/asker';
import { clientFileSystem, clientReader } from '../../server/files/client-files';
import { ClientStore } from '../../server/files/client-store';
import { byContent } from '../../server/files/content-version';
import { diskReader } from '../../server/files/disk-reader';
import { guardedFileSystem } from '../../server/files/guarded-file-system';
import { WorkspaceFiles } from '../../server/files/workspace-files';
import { followFolders } from '../../server/follow-folders';
import { GitVersions } from '../../server/git/git-versions';
import { serveLanguage } from '../../server/language-server';
import { inOrder } from '../../server/protocol/message-order';
import { DiskStore } from '../../server/writing/disk-store';

/** What a client says of itself beyond the least. */
export interface Says {
    readonly textDocument?: TextDocumentClientCapabilities;
    readonly workspace?: WorkspaceClientCapabilities;
    readonly window?: WindowClientCapabilities;
    readonly options?: object;
    /** The server has no git, as in a browser. */
    readonly browser?: true;
    /** Address of the manual beside the program. */
    readonly manual?: string;
    /** What it answers to requests of the server's own. */
    readonly answers?: Readonly<Record<string, (params: never) => unknown>>;
}

export interface Started {
    readonly client: LanguageClient;
    readonly answer: InitializeResult;
}

/** A client that talks to a real server over streams, with the geometry in this thread. */
export class LanguageClient {
    private readonly published = new Map<string, PublishDiagnosticsParams[]>();
    private readonly waiting = new Set<() => void>();
    /** How often the server has asked for its inlay hints to be asked for anew. */
    refreshes = 0;
    /** How often it has asked for its findings to be asked for anew. */
    diagnosticRefreshes = 0;

    private constructor(
        readonly connection: ProtocolConnection,
        answers: Says['answers'] = {},
    ) {
        for (const [name, answer] of Object.entries(answers)) connection.onRequest(name, answer);
        connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
            this.published.set(params.uri, [...(this.published.get(params.uri) ?? []), params]);
            for (const wake of this.waiting) wake();
        });
        connection.onRequest('client/registerCapability', () => null);
        connection.onRequest('workspace/configuration', (params: { items: unknown[] }) => params.items.map(() => null));
        connection.onRequest('workspace/inlayHint/refresh', () => {
            this.refreshes += 1;
            return null;
        });
        connection.onRequest('workspace/diagnostic/refresh', () => {
            this.diagnosticRefreshes += 1;
            for (const wake of this.waiting) wake();
            return null;
        });
        connection.onRequest('workspace/codeLens/refresh', () => null);
        connection.listen();
    }

    /** A server in this thread. */
    static start(folder: string, folderUri: string, says: Says = {}): Promise<Started> {
        const up = new PassThrough();
        const down = new PassThrough();
        const files = new WorkspaceFiles();
        const asker = new LocalAsker();
        const connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down), inOrder());
        const workshop = serveLanguage({
            connection,
            fileSystem: guardedFileSystem(files),
            read: byContent(diskReader(files)),
            asker,
            openStore: (folder) => new DiskStore(fileURLToPath(folder), files.folders),
            ...(says.browser === true ? {} : { versions: new GitVersions(files, asker) }),
            ...(says.manual !== undefined && { manual: says.manual }),
        });
        followFolders(connection, workshop, files);
        return files.setRoots([folder]).then(() => LanguageClient.over(down, up, folderUri, says));
    }

    /** A server as a browser has it: it sees no disk, asks the client for all it reads, and has no git. */
    static startInBrowser(folderUri: string, says: Says): Promise<Started> {
        const up = new PassThrough();
        const down = new PassThrough();
        const connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down), inOrder());
        const asker = new LocalAsker();
        serveLanguage({
            connection,
            fileSystem: clientFileSystem(connection),
            read: clientReader(connection),
            asker,
            openStore: (folder) => new ClientStore(connection, folder),
        });
        return LanguageClient.over(down, up, folderUri, says);
    }

    /** A server at the other end of two streams. */
    static async over(from: Readable, to: Writable, folderUri: string, says: Says = {}): Promise<Started> {
        const client = new LanguageClient(
            createProtocolConnection(new StreamMessageReader(from), new StreamMessageWriter(to)),
            says.answers,
        );
        const answer = await client.connection.sendRequest<InitializeResult>('initialize', {
            processId: null,
            rootUri: folderUri,
            workspaceFolders: [{ uri: folderUri, name: 'shop' }],
            capabilities: {
                textDocument: { publishDiagnostics: { relatedInformation: true }, ...(says.textDocument ?? {}) },
                workspace: { workspaceFolders: true, inlayHint: { refreshSupport: true }, ...(says.workspace ?? {}) },
                ...(says.window && { window: says.window }),
            },
            ...(says.options && { initializationOptions: says.options }),
        });
        await client.connection.sendNotification('initialized', {});
        return { client, answer };
    }

    open(uri: string, text: string): Promise<void> {
        return this.connection.sendNotification('textDocument/didOpen', {
            textDocument: { uri, languageId: 'kerfbook', version: 1, text },
        });
    }

    change(uri: string, version: number, text: string): Promise<void> {
        return this.connection.sendNotification('textDocument/didChange', {
            textDocument: { uri, version },
            contentChanges: [{ text }],
        });
    }

    /** The first published set that pleases; rejects with what came instead. */
    async diagnostics(uri: string, pleases: (all: Diagnostic[]) => boolean): Promise<Diagnostic[]> {
        const deadline = Date.now() + 15_000;
        for (;;) {
            const all = this.published.get(uri)?.at(-1)?.diagnostics ?? [];
            if (this.published.has(uri) && pleases(all)) return all;
            const left = deadline - Date.now();
            if (left <= 0)
                throw new Error(`Published for ${uri}: ${all.map((one) => `${String(one.code)} ${one.message}`).join('\n')}`);
            await new Promise<void>((resolve) => {
                const wake = (): void => {
                    clearTimeout(timer);
                    this.waiting.delete(wake);
                    resolve();
                };
                const timer = setTimeout(wake, left);
                this.waiting.add(wake);
            });
        }
    }

    /** How often findings of a file have been sent unasked. */
    sent(uri: string): number {
        return this.published.get(uri)?.length ?? 0;
    }

    stop(): void {
        this.connection.dispose();
    }
}
