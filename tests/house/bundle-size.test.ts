import { type BuildOptions, build } from 'esbuild';
import { expect, test } from 'vitest';

/** An editor loads all of it before the first squiggle. */
const mostBytes = 1_090_000;

const bundles = new URL('../../.config/bundles.mjs', import.meta.url).href;

test('the language server stays small: what only the worker needs is not in it', async () => {
    const { bundlesFor } = (await import(bundles)) as { bundlesFor(production: boolean): BuildOptions[] };
    const server = bundlesFor(true).find(({ outfile }) => outfile === 'dist/server.cjs')!;
    const { metafile } = await build({ ...server, write: false, metafile: true as const });
    const { bytes, inputs } = metafile.outputs['dist/server.cjs']!;
    expect(bytes).toBeLessThanOrEqual(mostBytes);
    const used = Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : []));
    expect(used.filter((file) => /clipper2|culori|css-tree|jpeg-js|jstat|ml-matrix/.test(file))).toEqual([]);
}, 60_000);
