/**
 * `npm run simulate -- [FIRST_SEED] [YEARS] [WORLD …]`: simulated years of a laser; how far pockets come out from what was
 * planned, where runs count, where they count all alike, and where they do not. Prints per cent, means over the years.
 * `npm run simulate -- drift [FIRST_SEED] [YEARS] [WORLD …]`: how often and how soon a drift is told, where there is one and where not.
 * `npm run simulate -- tone [FIRST_SEED] [COUPONS]`: how far tones come out from what was asked, on woods that darken in unlike ways.
 * `npm run simulate -- through [FIRST_SEED] [COUPONS]`: in how many veneers burnt through a skin is left.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
// Beside the sources, so that packages are found from there.
const out = mkdtempSync(`${here}out-`);
try {
    const outfile = `${out}/simulate.mjs`;
    await build({
        entryPoints: [`${here}simulate.ts`],
        outfile,
        bundle: true,
        platform: 'node',
        format: 'esm',
        packages: 'external',
        logLevel: 'error',
    });
    const { simulate } = await import(outfile);
    simulate(process.argv.slice(2));
} finally {
    rmSync(out, { recursive: true, force: true });
}
