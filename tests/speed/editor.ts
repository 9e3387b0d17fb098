import { type ChildProcess, spawn } from 'node:child_process';
import {
    createProtocolConnection,
    type InitializeParams,
    type Position,
    type ProtocolConnection,
    type PublishDiagnosticsParams,
    StreamMessageReader,
    StreamMessageWriter,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

/**
 * A language server in a process of its own, spoken to as an editor does: pieces of
 * text go out, findings are sent back. With PROFILES=FOLDER each server leaves a CPU profile of itself there.
 */
export class Editor {
    private readonly connection: ProtocolConnection;
    private readonly open = new Map<string, TextDocument>();
    private wake: (params: PublishDiagnosticsParams) => void = () => {};

    private constructor(private readonly server: ChildProcess) {
        this.connection = createProtocolConnection(
            new StreamMessageReader(server.stdout!),
            new StreamMessageWriter(server.stdin!),
        );
        this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) =>
            this.wake(params),
        );
        this.connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) => items.map(() => null));
        this.connection.onRequest('client/registerCapability', () => null);
        this.connection.listen();
    }

    static async start(file: string, folderUri: string): Promise<Editor> {
        const { PROFILES } = process.env;
        const flags = PROFILES === undefined ? [] : ['--cpu-prof', `--cpu-prof-dir=${PROFILES}`];
        const server = spawn(process.execPath, [...flags, file, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
        const editor = new Editor(server);
        const params: InitializeParams = {
            processId: process.pid,
            rootUri: folderUri,
            workspaceFolders: [{ uri: folderUri, name: 'shop' }],
            capabilities: {
                textDocument: { publishDiagnostics: { relatedInformation: true } },
                workspace: { workspaceFolders: true },
            },
        };
        await editor.connection.sendRequest('initialize', params);
        await editor.connection.sendNotification('initialized', {});
        return editor;
    }

    /** Opens a text and waits for its first findings. */
    async show(uri: string, languageId: string, text: string): Promise<TextDocument> {
        const document = TextDocument.create(uri, languageId, 1, text);
        this.open.set(uri, document);
        const answered = this.findings(uri, 1);
        await this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId, version: 1, text } });
        await answered;
        return document;
    }

    /** Writes over `length` characters and waits for the findings of just that text. */
    async write(uri: string, offset: number, length: number, text: string): Promise<void> {
        const document = this.open.get(uri)!;
        const version = document.version + 1;
        const change = { range: { start: document.positionAt(offset), end: document.positionAt(offset + length) }, text };
        const answered = this.findings(uri, version);
        void this.connection.sendNotification('textDocument/didChange', {
            textDocument: { uri, version },
            contentChanges: [change],
        });
        TextDocument.update(document, [change], version);
        await answered;
    }

    async ask(method: string, uri: string, position: Position): Promise<unknown> {
        return this.connection.sendRequest(method, { textDocument: { uri }, position });
    }

    /** Ends with the server's process. */
    async stop(): Promise<void> {
        const ended = new Promise((resolve) => this.server.once('exit', resolve));
        await this.connection.sendRequest('shutdown');
        await this.connection.sendNotification('exit');
        await ended;
        this.connection.dispose();
    }

    private findings(uri: string, version: number): Promise<void> {
        return new Promise((resolve) => {
            this.wake = (params) => {
                if (params.uri === uri && (params.version ?? version) >= version) resolve();
            };
        });
    }
}
