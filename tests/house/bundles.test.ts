import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { gzipSync } from 'node:zlib';
import { type BuildOptions, build, type Metafile } from 'esbuild';
import { beforeAll, expect, test } from 'vitest';
import { allowablePages } from '../../server/all-pages';

/** An editor loads all of it before the first squiggle. */
const mostBytes = 1_090_000;

const config = (file: string): string => new URL(`../../.config/${file}`, import.meta.url).href;
const root = new URL('../..', import.meta.url).pathname;

/** The one whose length is held as it is packed for users. */
const server = 'dist/server.cjs';
const geometry = /clipper2|culori|css-tree|jpeg-js|fast-png|guillotine/;

/** Those that are measured as they are packed. */
const packed = [server, 'dist/round.js'];

let outputs: Metafile['outputs'];
const texts = new Map<string, Uint8Array>();
/** All bundles, built once for every test here. What they are made of does not hang on how short their names are, which takes half the time. */
beforeAll(async () => {
    const { bundlesFor } = (await import(config('bundles.mjs'))) as { bundlesFor(production: boolean): BuildOptions[] };
    const built = await Promise.all(
        bundlesFor(true).map((bundle) =>
            build({ ...bundle, minify: packed.includes(bundle.outfile ?? ''), write: false, metafile: true as const }),
        ),
    );
    for (const { outputFiles } of built)
        for (const { path, contents } of outputFiles) texts.set(path.slice(root.length), contents);
    outputs = Object.assign({}, ...built.map(({ metafile }) => metafile.outputs));
}, 240_000);

test('the language server stays small: what only the worker needs is not in it', () => {
    const { bytes, inputs } = outputs[server]!;
    expect(bytes).toBeLessThanOrEqual(mostBytes);
    const used = Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : []));
    expect(used.filter((file) => /clipper2|culori|css-tree|jpeg-js|jstat|ml-matrix|saxes|svgson/.test(file))).toEqual([]);
});

test('what the server leaves to files of their own, it finds there', () => {
    const asked = new TextDecoder().decode(texts.get(server)).matchAll(/import\("\.\/(server-[^"]+)"\)/g);
    const made = Object.keys(outputs).filter((file) => file.startsWith('dist/server-'));
    expect(new Set(Array.from(asked, ([, file]) => `dist/${file}`))).toEqual(new Set(made));
    const { exports } = runAsModule(texts.get('dist/server-look-at-art.cjs')!);
    expect((exports as typeof import('../../server/workshop/look-at-art')).artNames('<svg><g id="reed"/></svg>').ids).toEqual([
        'reed',
    ]);
});

test('what draws a piece in the round is a chunk of its own, and small', () => {
    const threeIn = (bundle: string): string[] =>
        Object.keys(outputs[bundle]!.inputs).filter((file) => file.includes('node_modules/three/'));
    expect(threeIn('dist/round.js').length).toBeGreaterThan(0);
    expect(threeIn('dist/bench.js')).toEqual([]);
    expect(gzipSync(texts.get('dist/round.js')!).length).toBeLessThanOrEqual(200_000);
});

test('the built-in stock is the same text packed as it is written', async () => {
    const { whole, exported } = await asPacked('language/built-in.ts');
    const { builtInUris, builtInText } = exported as typeof import('../../language/built-in');
    expect(builtInUris.length).toBeGreaterThan(5);
    for (const uri of builtInUris) {
        const file = new URL(`../../language/stock/${uri.split('/').at(-1)}`, import.meta.url);
        expect(builtInText(uri), uri).toBe(await readFile(file, 'utf8'));
    }
    expect(whole.length).toBeLessThan(30_000); // 43 kB as they are written
});

test('what allow can name is the same packed as it is written', async () => {
    const { whole, exported } = await asPacked('server/all-pages.ts');
    expect(exported).toEqual({ allowablePages });
    expect(whole.length).toBeLessThan(0.9 * JSON.stringify(allowablePages).length);
});

/** A module as the build puts it into bundles, and what comes out of it. */
async function asPacked(file: string): Promise<{ whole: Buffer; exported: object }> {
    const { asData } = await import(config('as-data.mjs'));
    const entry = new URL(`../../${file}`, import.meta.url).pathname;
    const { outputFiles } = await build({ entryPoints: [entry], bundle: true, format: 'esm', write: false, plugins: [asData] });
    const whole = Buffer.from(outputFiles[0]!.contents);
    const exported = await import(/* @vite-ignore */ `data:text/javascript;base64,${whole.toString('base64')}`);
    return { whole, exported: { ...exported } };
}

test('every package that lies in a bundle is named with the words of its licence', async () => {
    const { noticesOf, packagesOf } = (await import(config('notices.mjs'))) as {
        noticesOf(inputs: readonly string[], root: string): Promise<string>;
        packagesOf(inputs: readonly string[]): string[];
    };
    const inputs = Object.values(outputs).flatMap((output) => Object.keys(output.inputs));
    const packages = packagesOf(inputs).map((folder) => folder.replace(/^.*node_modules\//, ''));
    const text = await noticesOf(inputs, root);
    for (const name of ['langium', 'clipper2-ts', 'clipper2-wasm', 'preact', 'vscode-languageclient', 'jstat', 'saxes'])
        expect(packages).toContain(name);
    for (const name of packages) expect(text).toMatch(new RegExp(`^${name.replaceAll(/[/@.-]/g, '\\$&')} \\d`, 'm'));
    expect(text).not.toContain('see below');
    expect(text.match(/Permission is hereby granted/g)!.length).toBeGreaterThan(10);
    await expect(noticesOf(['node_modules/nothing-of-it/index.js'], root)).rejects.toThrow();
});

/** All that is read before a piece runs: itself and what it imports, not what it asks for later. */
function readWith(piece: string, found = new Set<string>()): ReadonlySet<string> {
    if (found.has(piece)) return found;
    found.add(piece);
    for (const { path, kind, external } of outputs[piece]!.imports)
        if (kind === 'import-statement' && external !== true) readWith(path, found);
    return found;
}

function pieceOf(source: string): string {
    return Object.entries(outputs).find(([, { entryPoint }]) => entryPoint === source)![0];
}

test('the command line says how it is used without reading the language', () => {
    const pieces = [...readWith(pieceOf('server/cli.ts'))];
    expect(pieces.reduce((sum, piece) => sum + outputs[piece]!.bytes, 0)).toBeLessThan(50_000);
});

test('a history of runs is told without reading what draws and plans', () => {
    const pieces = [...readWith(pieceOf('server/cli/history.ts')), ...readWith(pieceOf('server/engine/answer-history.ts'))];
    const sources = pieces.flatMap((piece) => Object.keys(outputs[piece]!.inputs));
    expect(sources).toContain('shared/plan/plan-burns.ts');
    expect(sources.filter((file) => geometry.test(file))).toEqual([]);
    expect(sources).not.toContain('shared/plan/make-plan.ts');
});

test('two versions that draw the same are compared without reading what draws, and git is asked before the language is read', () => {
    const pieces = ['server/cli/compare-versions.ts', 'server/engine/review-in-brief.ts', 'shared/review/as-text.ts'].flatMap(
        (source) => [...readWith(pieceOf(source))],
    );
    const sources = pieces.flatMap((piece) => Object.keys(outputs[piece]!.inputs));
    expect(sources).toContain('shared/review/compare-plans.ts');
    expect(sources.filter((file) => geometry.test(file))).toEqual([]);
    expect(sources).not.toContain('shared/rules/all-rules.ts');
    const first = [...readWith(pieceOf('server/cli/diff.ts'))].flatMap((piece) => Object.keys(outputs[piece]!.inputs));
    expect(first).toContain('server/git/repository.ts');
    expect(first.filter((file) => file.includes('langium'))).toEqual([]);
});

function runAsModule(text: Uint8Array): { exports: unknown } {
    const made = { exports: {} };
    new Function('module', 'exports', 'require', new TextDecoder().decode(text))(
        made,
        made.exports,
        createRequire(import.meta.url),
    );
    return made;
}
