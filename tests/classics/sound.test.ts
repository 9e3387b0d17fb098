import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { encode } from 'fast-png';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allFindings } from '../../server/cli/all-findings';
import { openFiles } from '../../server/cli/open-files';

const folder = fileURLToPath(new URL('./sound/', import.meta.url));
const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.kerf'));

/** Recipes of other techniques, woods, machines and units than the samples: a rule that speaks here speaks falsely. */
describe('sound recipes have nothing to be said of them', () => {
    const said = new Map<string, readonly string[]>();
    const place = mkdtempSync(path.join(tmpdir(), 'kerfbook-sound-'));

    beforeAll(async () => {
        cpSync(folder, place, { recursive: true });
        writeFileSync(
            path.join(place, 'moon.png'),
            picture([200, 200], (x, y) => (Math.hypot(x - 0.5, y - 0.5) < 0.42 ? 40 : 250)),
        );
        writeFileSync(
            path.join(place, 'estuary.png'),
            picture([720, 430], (x, y) => 75 + 150 * y + 25 * Math.sin(9 * x)),
        );
        const { workshop, documents } = await openFiles([place]);
        for (const document of documents) {
            const found = await allFindings(workshop, document);
            const lines = found.map(({ line, finding }) => `${line}: ${finding.severity} ${finding.rule}: ${finding.message}`);
            said.set(path.relative(place, document.uri.fsPath), lines);
        }
    }, 120_000);
    afterAll(() => rmSync(place, { recursive: true }));

    it.each(names)('%s', (name) => expect(said.get(name)).toEqual([]));
});

function picture([width, height]: readonly [number, number], grey: (x: number, y: number) => number): Uint8Array {
    const data = Uint8Array.from({ length: width * height }, (_, i) => grey((i % width) / width, Math.floor(i / width) / height));
    return encode({ width, height, data, channels: 1 });
}
