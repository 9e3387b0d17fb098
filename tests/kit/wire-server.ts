import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import {
    type ClientCapabilities,
    createProtocolConnection,
    type InitializeResult,
    type ProtocolConnection,
    StreamMessageReader,
    StreamMessageWriter,
} from 'vscode-languageserver/node';

const cli = fileURLToPath(new URL('../../dist/cli.cjs', import.meta.url));

/** The built server in a process of its own, with what it writes beside the protocol and how it ends. */
export class WireServer {
    readonly process: ChildProcessWithoutNullStreams;
    readonly connection: ProtocolConnection;
    /** What came on standard error. */
    complaints = '';
    /** Resolves with the exit code, or the signal that ended it. */
    readonly ended: Promise<number | string>;

    /** @param nodeOptions for the process, such as an inspector's port */
    constructor(nodeOptions: readonly string[] = []) {
        this.process = spawn(process.execPath, [...nodeOptions, cli, 'serve'], { cwd: path.dirname(cli) });
        this.process.stderr.on('data', (data: Buffer) => {
            this.complaints += data.toString();
        });
        this.ended = new Promise((resolve) => this.process.once('exit', (code, signal) => resolve(code ?? signal ?? 'unknown')));
        this.connection = createProtocolConnection(
            new StreamMessageReader(this.process.stdout),
            new StreamMessageWriter(this.process.stdin),
        );
        this.connection.listen();
    }

    /** @param folder address of the one folder that the client has, undefined for a client that knows of none */
    async initialize(folder: string | undefined, capabilities: ClientCapabilities): Promise<InitializeResult> {
        const answer = await this.connection.sendRequest<InitializeResult>('initialize', {
            processId: null,
            rootUri: folder ?? null,
            ...(folder === undefined ? {} : { workspaceFolders: [{ uri: folder, name: 'shop' }] }),
            capabilities,
        });
        void this.connection.sendNotification('initialized', {});
        return answer;
    }

    stop(): void {
        this.connection.dispose();
        this.process.kill();
    }
}
