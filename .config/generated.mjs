/** What is made from the sources before they can run: the parser from the grammar, the bundles in dist/. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, globSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { context } from 'esbuild';
import { bundlesFor } from './bundles.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const parser = path.join(root, 'language', 'generated', 'ast.ts');
/** Not beside the parser: Langium asks whether to delete what it has not written there, and writes nothing meanwhile. */
const stamp = path.join(root, 'out', 'parser-made-from');

export function generateParser() {
    const cli = path.join(root, 'node_modules/langium-cli/bin/langium.js');
    const run = spawnSync(process.execPath, [cli, 'generate', '-f', '.config/langium.json'], { cwd: root, encoding: 'utf8' });
    if (run.status !== 0) throw new Error(`The parser could not be made from the grammar.\n${run.stdout}${run.stderr}`);
    mkdirSync(path.dirname(stamp), { recursive: true });
    writeFileSync(stamp, grammars());
}

/** The manifest's texts lie with the extension's; the editor and vsce look for them beside package.json. */
export function placeManifestTexts() {
    copyFileSync(path.join(root, 'extension/l10n/package.nls.json'), path.join(root, 'package.nls.json'));
}

/** The bundles, as contexts of esbuild that can be built again. */
export function bundling(production = false) {
    // Pieces have their content in their names: those of earlier builds would stay.
    rmSync(path.join(root, 'dist', 'cli'), { recursive: true, force: true });
    return Promise.all(bundlesFor(production).map((options) => context(options)));
}

/** Makes what is missing or older than what it is made from, for tests that run in a fresh clone or between two builds. */
export async function makeWhatIsStale({ bundles = true } = {}) {
    if (!existsSync(parser) || !existsSync(stamp) || readFileSync(stamp, 'utf8') !== grammars()) generateParser();
    placeManifestTexts();
    if (!bundles || newest() <= oldestBundle()) return;
    const contexts = await bundling();
    try {
        await Promise.all(contexts.map((each) => each.rebuild()));
    } finally {
        await Promise.all(contexts.map((each) => each.dispose()));
    }
}

/** What the parser depends on, by content: a checkout gives every file the time of the checkout. */
function grammars() {
    const hash = createHash('sha256');
    const files = ['language/*.langium', '.config/langium.json', 'node_modules/langium-cli/package.json'];
    for (const file of globSync(files, { cwd: root }).sort()) hash.update(file).update(readFileSync(path.join(root, file)));
    return hash.digest('hex');
}

function oldestBundle() {
    const files = bundlesFor(false).map(({ outfile, outdir }) => outfile ?? path.join(outdir, 'cli.mjs'));
    const times = files.map((file) => statSync(path.join(root, file), { throwIfNoEntry: false })?.mtimeMs);
    return Math.min(...times.map((time) => time ?? 0));
}

function newest() {
    const sources = ['{shared,language,server,extension}/**/*.{ts,tsx,kerf,json,css,md}', '.config/*.mjs', 'package-lock.json'];
    return Math.max(...globSync(sources, { cwd: root }).map((file) => statSync(path.join(root, file)).mtimeMs));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) generateParser();
