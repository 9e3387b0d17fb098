import { type BuildOptions, build } from 'esbuild';
import { expect, test } from 'vitest';

const config = (file: string): string => new URL(`../../.config/${file}`, import.meta.url).href;
const root = new URL('../..', import.meta.url).pathname;

test('every package that lies in a bundle is named with the words of its licence', async () => {
    const { bundlesFor } = (await import(config('bundles.mjs'))) as { bundlesFor(production: boolean): BuildOptions[] };
    const { noticesOf, packagesOf } = (await import(config('notices.mjs'))) as {
        noticesOf(inputs: readonly string[], root: string): Promise<string>;
        packagesOf(inputs: readonly string[]): string[];
    };
    const built = await Promise.all(
        bundlesFor(true).map((bundle) => build({ ...bundle, minify: false, write: false, metafile: true as const })),
    );
    const inputs = built.flatMap(({ metafile }) =>
        Object.values(metafile.outputs).flatMap((output) => Object.keys(output.inputs)),
    );
    const packages = packagesOf(inputs).map((folder) => folder.replace(/^.*node_modules\//, ''));
    const text = await noticesOf(inputs, root);
    for (const name of ['langium', 'clipper2-ts', 'clipper2-wasm', 'preact', 'vscode-languageclient', 'jstat', 'saxes'])
        expect(packages).toContain(name);
    for (const name of packages) expect(text).toMatch(new RegExp(`^${name.replaceAll(/[/@.-]/g, '\\$&')} \\d`, 'm'));
    expect(text).not.toContain('see below');
    expect(text.match(/Permission is hereby granted/g)!.length).toBeGreaterThan(10);
    await expect(noticesOf(['node_modules/nothing-of-it/index.js'], root)).rejects.toThrow();
}, 240_000);
