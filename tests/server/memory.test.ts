import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, afterEach, expect, it } from 'vitest';
import { notifications, requests } from '../../shared/view/requests';
import { HeapOf } from '../kit/heap-of';
import { WireServer } from '../kit/wire-server';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-memory-'));
cpSync(samples, folder, { recursive: true });
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();
const names = readdirSync(folder).filter((name) => name.endsWith('.kerf'));
const textOf = (name: string) => readFileSync(path.join(folder, name), 'utf8');

let server: WireServer;
afterEach(() => server.stop());
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const tell = (what: string, params: object) => void server.connection.sendNotification(what, params);
const open = (uri: string, text: string) =>
    tell('textDocument/didOpen', { textDocument: { uri, languageId: 'kerfbook', version: 1, text } });
const close = (uri: string) => tell('textDocument/didClose', { textDocument: { uri } });
const ask = (what: string, uri: string) =>
    server.connection.sendRequest(what, { textDocument: { uri }, position: { line: 3, character: 4 }, uri });
/** Until no file has been planned for four seconds: what an edit moved in other files is planned once there is a pause. */
async function rest(): Promise<void> {
    let last = Date.now();
    const listening = server.connection.onNotification(notifications.planned.method, () => {
        last = Date.now();
    });
    while (Date.now() - last < 4000) await new Promise((resolve) => setTimeout(resolve, 100));
    listening.dispose();
}
const everyFile = () => server.connection.sendRequest('workspace/diagnostic', { previousResultIds: [] });

/** Resident memory of a process, as the system counts it; bytes. Zero where it does not say. */
function resident(pid: number | undefined): number {
    try {
        return 1024 * Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
    } catch {
        return 0;
    }
}

/** The most resident memory that a process has had so far, bytes. */
function peakOf(pid: number | undefined): number {
    try {
        return 1024 * Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
    } catch {
        return 0;
    }
}

/** Opens every file, looks at it from all sides while it is typed in, and closes it. */
async function work(round: number): Promise<void> {
    for (const name of names) {
        const uri = uriOf(name);
        const text = textOf(name);
        open(uri, text);
        for (let version = 2; version < 4; version++) {
            tell('textDocument/didChange', {
                textDocument: { uri, version },
                contentChanges: [{ text: `${text}\n// ${round} ${version}\n` }],
            });
            for (const each of ['hover', 'completion', 'semanticTokens/full', 'documentSymbol', 'codeLens', 'diagnostic'])
                await ask(`textDocument/${each}`, uri);
        }
        await ask(requests.bench.method, uri);
        await ask(requests.checklist.method, uri);
        close(uri);
    }
}

it('what was opened is let go of when all is closed', async () => {
    // Without machine code, which grows with what has been used and not with what was opened: with it 1.25 to 1.31 times were measured,
    // and of the 11 MB more, by a snapshot of the heap, 0.5 were objects and the rest code.
    server = new WireServer(['--inspect=0', '--no-opt', '--no-sparkplug']);
    await server.initialize(pathToFileURL(folder).toString(), { textDocument: { diagnostic: {} } });
    await everyFile();
    const heap = await HeapOf.of(server);
    const start = await heap.retained();
    const startResident = resident(server.process.pid);
    await work(1);
    const large = uriOf('large.kerf');
    open(large, megabyte());
    await ask('textDocument/documentSymbol', large);
    close(large);
    await everyFile();
    await rest();
    const end = await heap.retained();
    const total = ({ main, workers }: typeof start) => main + workers;
    const mb = (bytes: number) => `${Math.round(bytes / 1e6)} MB`;
    console.log(
        `retained ${mb(start.main)} and in workers ${mb(start.workers)} at the start, ${mb(end.main)} and ${mb(end.workers)} after all is closed (${(total(end) / total(start)).toFixed(2)} times); resident ${mb(startResident)}, then ${mb(resident(server.process.pid))}`,
    );
    heap.close();
    expect(total(end) / total(start)).toBeLessThanOrEqual(1.3);
}, 240_000);

// Where the system tells it: Linux.
it.runIf(existsSync('/proc/self/status'))(
    'a megabyte of text that is typed in stays under 600 MB',
    async () => {
        server = new WireServer();
        await server.initialize(pathToFileURL(folder).toString(), {});
        const uri = uriOf('large.kerf');
        const text = megabyte();
        open(uri, text);
        for (let version = 2; version < 6; version++) {
            for (const each of ['documentSymbol', 'semanticTokens/full', 'foldingRange', 'codeLens'])
                await ask(`textDocument/${each}`, uri);
            tell('textDocument/didChange', {
                textDocument: { uri, version },
                contentChanges: [{ text: `// typed ${version}\n${text}` }],
            });
        }
        await ask('textDocument/documentSymbol', uri);
        const peak = peakOf(server.process.pid);
        console.log(`${(text.length / 1e6).toFixed(2)} MB of text: resident at most ${Math.round(peak / 1e6)} MB`);
        expect(peak).toBeLessThan(600e6);
    },
    240_000,
);

/** The heron tray many times over, under other names. */
function megabyte(): string {
    const tray = textOf('heron-tray.kerf');
    const [head] = tray.split('recipe ', 1);
    const body = tray.slice(head!.length).replaceAll(/^run [\s\S]*?^}\n?/gm, '');
    const parts = [head!];
    for (let length = 0, index = 0; length < 1e6; index++) {
        const part = body.replaceAll('heron-tray', `tray-${index}`);
        parts.push(part);
        length += part.length;
    }
    return parts.join('');
}
