import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { places } from './places.ts';

export interface CodeServer {
    readonly origin: string;
    readonly authority: string;
    /** Writes the user's settings, also while a window is open. */
    settings(change: object): void;
    stop(): void;
}

/** Settings under which a shot looks the same every time. */
const quiet = {
    'workbench.startupEditor': 'none',
    'workbench.tips.enabled': false,
    'workbench.enableExperiments': false,
    'chat.disableAIFeatures': true,
    'editor.minimap.enabled': false,
    'editor.cursorBlinking': 'solid',
    'window.commandCenter': false,
    'window.autoDetectColorScheme': false,
    'workbench.secondarySideBar.defaultVisibility': 'hidden',
    'telemetry.telemetryLevel': 'off',
    'extensions.autoCheckUpdates': false,
    'terminal.integrated.gpuAcceleration': 'off',
    'git.enabled': false,
};

export interface Ways {
    /** Whether folders are not trusted until somebody says so. */
    readonly restricted?: boolean;
    /** Whether the extension is installed, as its users have it. An editor that takes one under development never shows a message. */
    readonly installed?: boolean;
}

/** Starts VS Code as a server on a free port of this machine, with a fresh profile under `home`. */
export async function startCodeServer(home: string, { restricted = false, installed = false }: Ways = {}): Promise<CodeServer> {
    const port = await freePort();
    const data = join(home, 'data');
    mkdirSync(join(data, 'User'), { recursive: true });
    const settings = (change: object) =>
        writeFileSync(
            join(data, 'User', 'settings.json'),
            JSON.stringify({
                ...quiet,
                'security.workspace.trust.enabled': restricted,
                'security.workspace.trust.startupPrompt': 'never',
                ...change,
            }),
        );
    settings({});
    const extensions = join(home, 'extensions');
    mkdirSync(extensions, { recursive: true });
    if (installed) install(extensions);
    const args = [
        ...['--config', '/dev/null', '--bind-addr', `127.0.0.1:${port}`, '--auth', 'none', '--disable-telemetry'],
        ...['--disable-update-check', '--disable-getting-started-override', '--disable-proxy'],
        ...(restricted ? [] : ['--disable-workspace-trust']),
        ...['--user-data-dir', data, '--extensions-dir', extensions],
        ...(installed ? [] : ['--vscode-option', 'enable-smoke-test-driver']),
    ];
    const env = { ...process.env, EXTENSIONS_GALLERY: '{}', NODE_ENV: undefined };
    // A group of its own, so that stopping it stops the processes it starts as well.
    const child = spawn(process.execPath, [places.codeServer, ...args], {
        env,
        detached: true,
        stdio: ['ignore', 'pipe', 'pipe'],
    });
    const log: string[] = [];
    child.stdout.on('data', (text) => log.push(String(text)));
    child.stderr.on('data', (text) => log.push(String(text)));
    const stop = () => stopGroup(child);
    process.once('exit', stop);
    const authority = `127.0.0.1:${port}`;
    const origin = `http://${authority}`;
    for (let attempt = 0; attempt < 300; attempt += 1) {
        if (child.exitCode !== null) break;
        const answer = await fetch(`${origin}/healthz`).catch(() => undefined);
        if (answer?.ok === true) return { origin, authority, settings, stop };
        await sleep(200);
    }
    stop();
    throw new Error(`VS Code did not start.\n${log.join('')}`);
}

/** Puts the extension where the editor keeps those that were installed, with its line in their list. */
function install(extensions: string): void {
    const { name, publisher, version } = JSON.parse(readFileSync(join(places.root, 'package.json'), 'utf8'));
    const id = `${publisher}.${name}`;
    const folder = `${id}-${version}`;
    symlinkSync(places.root, join(extensions, folder));
    const location = { $mid: 1, scheme: 'file', path: join(extensions, folder) };
    const entry = { identifier: { id }, version, location, relativeLocation: folder, metadata: {} };
    writeFileSync(join(extensions, 'extensions.json'), JSON.stringify([entry]));
}

function stopGroup(child: ChildProcess): void {
    if (child.pid === undefined || child.exitCode !== null) return;
    try {
        process.kill(-child.pid, 'SIGTERM');
    } catch {
        // already gone
    }
}

function freePort(): Promise<number> {
    return new Promise((resolve, reject) => {
        const server = createServer();
        server.on('error', reject);
        server.listen(0, '127.0.0.1', () => {
            const address = server.address();
            server.close(() =>
                typeof address === 'object' && address !== null ? resolve(address.port) : reject(new Error('no port')),
            );
        });
    });
}
