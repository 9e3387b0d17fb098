/**
 * Builds everything that runs from dist/: the extension, the bench view, the server, the command line.
 *
 *     node .config/build.mjs [--production] [--watch]
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { context } from 'esbuild';
import { bundlesFor } from './bundles.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const production = process.argv.includes('--production');
const watch = process.argv.includes('--watch');

function generateParser() {
    const cli = fileURLToPath(new URL('../node_modules/langium-cli/bin/langium.js', import.meta.url));
    const run = spawnSync(process.execPath, [cli, 'generate', '-f', '.config/langium.json'], { cwd: root, encoding: 'utf8' });
    if (run.status !== 0) {
        process.stderr.write(`${run.stdout}${run.stderr}`);
        process.exit(1);
    }
}

generateParser();
const contexts = await Promise.all(bundlesFor(production).map((options) => context(options)));
if (watch) {
    await Promise.all(contexts.map((each) => each.watch()));
} else {
    try {
        await Promise.all(contexts.map((each) => each.rebuild()));
    } catch {
        process.exitCode = 1; // esbuild has said why
    }
    await Promise.all(contexts.map((each) => each.dispose()));
}
