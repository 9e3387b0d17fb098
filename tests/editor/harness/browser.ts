import { type Browser, chromium, type Page } from 'playwright-core';
// @ts-expect-error plain JavaScript, so that it runs before anything is installed
import { browserPath } from '../install.mjs';
import type { CodeServer } from './code-server.ts';

/** The most that a window may take to come up (ms): on a busy machine far longer than anything that is done in it. */
export const LOADING = 100_000;

/** Waits until a window has drawn the editor. */
export async function workbenchOn(page: Page): Promise<void> {
    const drawn = page.locator('.monaco-workbench .explorer-viewlet, .monaco-workbench .pane-body').first();
    await drawn.waitFor({ timeout: LOADING });
}

/** A headless browser that reaches this machine and nothing else. */
export function launchBrowser(): Promise<Browser> {
    return chromium.launch({
        executablePath: browserPath(),
        args: [
            ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
            ...['--disable-component-update', '--disable-sync', '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1'],
        ],
    });
}

/** The address of a window on `folder`, with the extension under development and running `tests` inside it when given. */
export function windowAddress(server: CodeServer, folder: string, extension?: string, tests?: string): string {
    const remote = (path: string) => `vscode-remote://${server.authority}${path}`;
    const payload = [
        ...(extension === undefined ? [] : [['extensionDevelopmentPath', remote(extension)]]),
        ...(tests === undefined ? [] : [['extensionTestsPath', remote(tests)]]),
    ];
    const query = new URLSearchParams({ folder, payload: JSON.stringify(payload) });
    return `${server.origin}/?${query}`;
}
