import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it, vi } from 'vitest';
import type { PlannedParams } from '../../shared/view/protocol';
import { notifications } from '../../shared/view/requests';
import { WireServer } from '../kit/wire-server';
import { coaster, shopFiles } from './shop-files';

// The coaster has a run, so that every recipe in its folder is read anew with it: the run could be of any.
const withRun = `${coaster}run coaster 2026-03-02 {\n  hollow of walnut-12 80 % at 400 mm/s depth 0.5 mm\n}\n`;
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-planned-'));
for (const [name, text] of Object.entries({ ...shopFiles, 'coaster.kerf': withRun })) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
}
const server = new WireServer();
afterAll(() => {
    server.stop();
    rmSync(folder, { recursive: true, force: true });
});

it('an edit has nobody else planned who says the same; what points at what moved is put right in a pause', async () => {
    const planned: string[] = [];
    server.connection.onNotification(notifications.planned.method, ({ uri, textVersion }: PlannedParams) => {
        planned.push(`${path.posix.basename(uri)} ${textVersion}`);
    });
    await server.initialize(pathToFileURL(folder).toString(), {});
    const uri = pathToFileURL(path.join(folder, 'coaster.kerf')).toString();
    const tell = (what: string, params: object) => void server.connection.sendNotification(what, params);
    tell('textDocument/didOpen', { textDocument: { uri, languageId: 'kerfbook', version: 1, text: withRun } });
    await vi.waitFor(
        () => expect(planned).toEqual(expect.arrayContaining(['plate.kerf 0', 'coaster.kerf 1', 'shop.kerf 0'])),
        20_000,
    );
    const plates = () => planned.filter((each) => each.startsWith('plate'));
    await vi.waitFor(
        async () => {
            const before = planned.length;
            await new Promise((resolve) => setTimeout(resolve, 3000));
            expect(planned.length).toBe(before);
        },
        { timeout: 40_000 },
    );
    planned.length = 0;
    for (let version = 2; version < 6; version++) {
        const text = withRun.replace('depth 0.5 mm air', `depth 0.5${version} mm air`);
        tell('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [{ text }] });
        await vi.waitFor(() => expect(planned).toContain(`coaster.kerf ${version}`), 20_000);
    }
    expect(plates()).toEqual([]);
    await vi.waitFor(() => expect(plates()).toEqual(['plate.kerf 0']), 20_000);
}, 120_000);
