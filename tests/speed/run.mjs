/** Bundles the benchmarks named on the command line (all if none) and runs them one after another: node tests/speed/run.mjs [toolpath] */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const helpers = ['measure.ts', 'art.ts', 'bare-library.ts', 'language-texts.ts', 'editor.ts', 'json-server.ts'];
const asked = process.argv.slice(2).map((name) => `${name}.ts`);
const files = readdirSync(here).filter(
    (file) => file.endsWith('.ts') && !helpers.includes(file) && (asked.length === 0 || asked.includes(file)),
);

// Beside the sources, so that packages are found from there.
const out = mkdtempSync(`${here}out-`);
try {
    for (const file of files) {
        const outfile = `${out}/${file.replace(/ts$/, 'mjs')}`;
        await build({
            entryPoints: [here + file],
            outfile,
            bundle: true,
            platform: 'node',
            format: 'esm',
            packages: 'external',
            loader: { '.kerf': 'text' },
            logLevel: 'error',
        });
        console.log(`\n== ${file}`);
        const { status } = spawnSync(process.execPath, [outfile], { stdio: 'inherit' });
        if (status !== 0) process.exitCode = 1;
    }
} finally {
    rmSync(out, { recursive: true, force: true });
}
