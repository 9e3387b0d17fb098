import { type BuildOptions, build, type Metafile } from 'esbuild';
import { beforeAll, expect, test } from 'vitest';

const bundles = new URL('../../.config/bundles.mjs', import.meta.url).href;
const geometry = /clipper2|culori|css-tree|jpeg-js|fast-png|guillotine/;

let outputs: Metafile['outputs'];

beforeAll(async () => {
    const { bundlesFor } = (await import(bundles)) as { bundlesFor(production: boolean): BuildOptions[] };
    const pieces = bundlesFor(false).find(({ outdir }) => outdir === 'dist/cli')!;
    ({ outputs } = (await build({ ...pieces, write: false, metafile: true as const })).metafile);
}, 60_000);

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
