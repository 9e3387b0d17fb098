import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { asData } from './as-data.mjs';
import { tabletScript } from './tablet-script.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

const common = {
    absWorkingDir: root,
    bundle: true,
    logLevel: 'warning',
    // Built-in stock is text that travels inside the bundle; the polygon engine's bytes likewise.
    loader: { '.kerf': 'text', '.wasm': 'binary' },
    plugins: [asData, tabletScript],
};

/** Node reads its files as UTF-8: a dash or an apostrophe of a text is three bytes there, and six as an escape. */
const node = { ...common, platform: 'node', format: 'cjs', target: 'node20', charset: 'utf8' };

/** Parts of the language server that most sessions never ask for: each a file of its own, read at the first `import()` of it. */
const rarelyAsked = ['server/workshop/look-at-art.ts'];

const chunkOf = (file) => `server-${path.basename(file, '.ts')}.cjs`;

/** Leaves those out of the server's bundle. Nothing of it may be kept in them: what both bundle stands in each of them. */
const leaveRarelyAsked = {
    name: 'leave-rarely-asked',
    setup({ onResolve }) {
        onResolve({ filter: /^\.{1,2}\// }, ({ path: asked, resolveDir, kind }) => {
            if (kind !== 'dynamic-import') return undefined;
            const file = path.relative(root, `${path.resolve(resolveDir, asked)}.ts`).replaceAll(path.sep, '/');
            return rarelyAsked.includes(file) ? { path: `./${chunkOf(file)}`, external: true } : undefined;
        });
    },
};

/** What goes into dist/, as esbuild takes it. */
export function bundlesFor(production) {
    const how = production ? { minify: true, metafile: true } : { sourcemap: 'linked' };
    return bundles.map((bundle) => ({ ...bundle, ...how }));
}

/** What packages written for CommonJS ask for, and the folder in which bundles look for each other. */
const pieceOfCli = `import { createRequire as requireFrom } from 'node:module';
const require = requireFrom(import.meta.url);
const __dirname = require('node:path').join(require('node:url').fileURLToPath(import.meta.url), '..', '..');`;

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
    {
        ...node,
        entryPoints: ['server/main.node.ts'],
        outfile: 'dist/server.cjs',
        plugins: [...common.plugins, leaveRarelyAsked],
    },
    ...rarelyAsked.map((file) => ({ ...node, entryPoints: [file], outfile: `dist/${chunkOf(file)}` })),
    { ...node, entryPoints: ['server/worker/node-worker.ts'], outfile: 'dist/worker.cjs' },
    // Reading all of the command line takes longer than most of its work: it is in pieces, and each command reads those it needs.
    {
        ...node,
        entryPoints: ['server/cli.ts'],
        outdir: 'dist/cli',
        entryNames: '[name]',
        outExtension: { '.js': '.mjs' },
        // Read at once as one byte a sign; the few escapes take less time than finding out that there is anything else.
        charset: 'ascii',
        format: 'esm',
        splitting: true,
        banner: { js: pieceOfCli },
    },
    {
        ...node,
        stdin: { contents: "import('./cli/cli.mjs');", resolveDir: '.', sourcefile: 'cli.cjs' },
        outfile: 'dist/cli.cjs',
        external: ['./cli/cli.mjs'],
        banner: { js: '#!/usr/bin/env node' },
    },
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
    // three.js: read when a piece is first looked at in the round.
    {
        ...common,
        entryPoints: ['extension/bench/webview/round/chunk.ts'],
        outfile: 'dist/round.js',
        platform: 'browser',
        format: 'iife',
        globalName: 'kerfbookRound',
        target: 'chrome128',
    },
];
