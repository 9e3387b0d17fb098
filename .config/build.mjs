/**
 * Builds everything that runs from dist/: the extension, the bench view, the server, the command line.
 *
 *     node .config/build.mjs [--production] [--watch]
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { context } from 'esbuild';

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

const common = {
    absWorkingDir: root,
    bundle: true,
    sourcemap: production ? false : 'linked',
    minify: production,
    keepNames: true,
    logLevel: 'warning',
    // Built-in stock is text that travels inside the bundle; the polygon engine's bytes likewise.
    loader: { '.kerf': 'text', '.wasm': 'binary' },
};

const node = { ...common, platform: 'node', format: 'cjs', target: 'node22' };

const bundles = [
    { ...node, entryPoints: ['extension/main.ts'], outfile: 'dist/extension.cjs', external: ['vscode'] },
    {
        ...common,
        entryPoints: ['extension/main.browser.ts'],
        outfile: 'dist/extension.web.cjs',
        platform: 'browser',
        format: 'cjs',
        target: 'chrome128',
        external: ['vscode'],
    },
    { ...node, entryPoints: ['server/main.node.ts'], outfile: 'dist/server.cjs' },
    { ...node, entryPoints: ['server/worker/node-worker.ts'], outfile: 'dist/worker.cjs' },
    { ...node, entryPoints: ['server/cli.ts'], outfile: 'dist/cli.cjs', banner: { js: '#!/usr/bin/env node' } },
    {
        ...common,
        entryPoints: ['server/main.browser.ts'],
        outfile: 'dist/server.web.js',
        platform: 'browser',
        // The polygon library asks for these under Node only.
        external: ['fs', 'path', 'crypto'],
        format: 'iife',
        target: 'chrome128',
    },
    {
        ...common,
        entryPoints: ['extension/bench/webview/bench.tsx'],
        outfile: 'dist/bench.js',
        platform: 'browser',
        format: 'iife',
        target: 'chrome128',
        jsx: 'automatic',
        jsxImportSource: 'preact',
    },
];

generateParser();
const contexts = await Promise.all(bundles.map((options) => context(options)));
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
