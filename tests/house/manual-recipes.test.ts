import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runIn } from '../kit/run-in';

const root = fileURLToPath(new URL('../..', import.meta.url));
const docs = path.join(root, 'extension', 'docs');
/** Getting started has a folder of its own (manual.test.ts); the others stand beside the sample workshop. */
const pages = readdirSync(docs).filter((name) => name.endsWith('.md') && name !== 'getting-started.md');
const blocksOf = (text: string): [string, string][] =>
    [...text.matchAll(/^```kerf\n\/\/ (\S+)\n(.*?)^```/gms)].map(([, name, body]) => [name!, body!]);
/** Lines of the command line that stand under `sh`, without what is said behind them; forms and those that wait for others are not run. */
const linesOf = (text: string): string[] =>
    [...text.matchAll(/^```sh\n(.*?)^```/gms)].flatMap(([, body]) =>
        body!
            .split('\n')
            .map((line) => line.replace(/\s+#.*$/, ''))
            .filter((line) => /^kerfbook (?!serve)/.test(line)),
    );

let folder = '';
beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-manual-'));
    cpSync(path.join(root, 'samples'), folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.for(pages)('%s: its recipes are sound, and its commands do what they say', async (page) => {
    const text = readFileSync(path.join(docs, page), 'utf8');
    const blocks = blocksOf(text);
    for (const [name, body] of blocks) {
        writeFileSync(path.join(folder, name), body);
        const { code, out } = await runIn(folder, ['check', '--strict', name]);
        expect(`${name}: ${code}, ${out}`).toBe(`${name}: 0, 1 file: 0 errors, 0 warnings\n`);
    }
    // Every block of a recipe has a file's name, so that none is left unchecked.
    expect([...text.matchAll(/^```kerf$/gm)]).toHaveLength(blocks.length);
    // The page of the command line is made from the usages, whose examples tests/server/cli-usage.test.ts holds to the options.
    if (page === 'command-line.md') return;
    for (const line of linesOf(text)) {
        const { code, err } = await runIn(folder, words(line));
        expect(`${line}: ${code} ${err}`).toBe(`${line}: 0 `);
    }
});

test('the manual has recipes and commands to look at', () => {
    const all = pages.map((page) => readFileSync(path.join(docs, page), 'utf8'));
    expect(all.flatMap(blocksOf).length).toBeGreaterThanOrEqual(9);
    expect(all.flatMap(linesOf).length).toBeGreaterThanOrEqual(14);
});

function words(line: string): string[] {
    return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!).slice(1);
}
