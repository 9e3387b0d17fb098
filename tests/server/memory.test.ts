import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, afterEach, expect, it } from 'vitest';
import { WireServer } from '../kit/wire-server';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-memory-'));
cpSync(samples, folder, { recursive: true });
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();
const textOf = (name: string) => readFileSync(path.join(folder, name), 'utf8');

let server: WireServer;
afterEach(() => server.stop());
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const tell = (what: string, params: object) => void server.connection.sendNotification(what, params);
const open = (uri: string, text: string) =>
    tell('textDocument/didOpen', { textDocument: { uri, languageId: 'kerfbook', version: 1, text } });
const ask = (what: string, uri: string) =>
    server.connection.sendRequest(what, { textDocument: { uri }, position: { line: 3, character: 4 }, uri });

/** Resident memory of a process, as the system counts it; bytes. Zero where it does not say. */
function resident(pid: number | undefined, what: 'VmHWM'): number {
    try {
        return 1024 * Number(new RegExp(`${what}:\\s+(\\d+)`).exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
    } catch {
        return 0;
    }
}

it('a megabyte of text stays below 600 MB', async () => {
    server = new WireServer();
    await server.initialize(pathToFileURL(folder).toString(), { textDocument: { diagnostic: {} } });
    const large = uriOf('large.kerf');
    const text = megabyte();
    open(large, text);
    await ask('textDocument/documentSymbol', large);
    for (let version = 2; version < 3; version++) {
        tell('textDocument/didChange', {
            textDocument: { uri: large, version },
            contentChanges: [{ text: `${text}// ${version}\n` }],
        });
        await ask('textDocument/semanticTokens/full', large);
    }
    await ask('textDocument/diagnostic', large);
    const most = resident(server.process.pid, 'VmHWM');
    expect(most, `${Math.round(most / 1e6)} MB resident at most`).toBeLessThan(600e6);
}, 240_000);

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
