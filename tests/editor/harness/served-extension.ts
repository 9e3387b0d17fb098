import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, normalize } from 'node:path';
import type { Page } from 'playwright-core';
import { places } from './places.ts';

const types: Readonly<Record<string, string>> = {
    '.cjs': 'text/javascript',
    '.js': 'text/javascript',
    '.json': 'application/json',
    '.css': 'text/css',
    '.svg': 'image/svg+xml',
    '.png': 'image/png',
};

export interface ServedExtension {
    readonly authority: string;
    stop(): void;
}

/** The extension's files over HTTP, as an editor without Node gets them. */
export async function serveExtension(): Promise<ServedExtension> {
    const server = createServer(async (request, response) => {
        const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname));
        const everywhere = { 'access-control-allow-origin': '*', 'cross-origin-resource-policy': 'cross-origin' };
        try {
            const body = await readFile(`${places.root}${path}`);
            response
                .writeHead(200, { ...everywhere, 'content-type': types[extname(path)] ?? 'application/octet-stream' })
                .end(body);
        } catch {
            response.writeHead(404, everywhere).end();
        }
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('no port');
    return { authority: `127.0.0.1:${address.port}`, stop: () => server.close() };
}

/** Has the window load that extension into its browser's own extension host, where there is no Node. */
export async function developInBrowser(page: Page, { authority }: ServedExtension): Promise<void> {
    await page.addInitScript((from) => {
        const read = Element.prototype.getAttribute;
        Element.prototype.getAttribute = function (this: Element, name: string) {
            const value = read.call(this, name);
            if (name !== 'data-settings' || this.id !== 'vscode-workbench-web-configuration' || value === null) return value;
            const extensions = [{ scheme: 'http', authority: from, path: '/' }];
            return JSON.stringify({ ...JSON.parse(value), developmentOptions: { extensions } });
        };
    }, authority);
}
