import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { requests } from '../../shared/view/requests';
import type { SentPicture } from '../../shared/view/sent-picture';
import { LanguageClient } from '../kit/language-client';

const root = fileURLToPath(new URL('../..', import.meta.url));
const samples = path.join(root, 'samples');

let server: ChildProcessWithoutNullStreams;
let client: LanguageClient;
beforeAll(async () => {
    server = spawn(process.execPath, [path.join(root, 'dist', 'cli.cjs'), 'serve'], { cwd: root });
    ({ client } = await LanguageClient.over(server.stdout, server.stdin, pathToFileURL(samples).toString()));
});
afterAll(() => {
    client.stop();
    server.kill();
});

describe('kerfbook serve: the built server over standard input and output', () => {
    it('plans in its worker and publishes what the trade says', async () => {
        const file = path.join(samples, 'heron-tray.kerf');
        const uri = pathToFileURL(file).toString();
        await client.open(uri, readFileSync(file, 'utf8').replace(/^ *mirror\r?\n/m, ''));
        const all = await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'not-mirrored'));
        expect(all.map(({ code }) => code)).toContain('not-mirrored');
        const view = await client.connection.sendRequest<SentPicture>(requests.bench.method, { uri });
        expect(view.inlays[0]).toMatchObject({ good: false });
    });
});
