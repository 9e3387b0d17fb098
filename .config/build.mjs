/**
 * Builds everything that runs from dist/: the extension, the bench view, the server, the command line.
 *
 *     node .config/build.mjs [--production] [--watch]
 */
import { readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundling, generateParser, placeManifestTexts } from './generated.mjs';
import { noticesOf } from './notices.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const production = process.argv.includes('--production');
const watch = process.argv.includes('--watch');

try {
    generateParser();
    placeManifestTexts();
} catch (error) {
    process.stderr.write(`${error.message}\n`);
    process.exit(1);
}

/** What the licences of bundled packages ask to be passed on goes into the package too. */
async function writeNotices(results) {
    const inputs = results.flatMap(({ metafile }) =>
        Object.values(metafile.outputs).flatMap((output) => Object.keys(output.inputs)),
    );
    await writeFile(new URL('../dist/third-party-notices.txt', import.meta.url), await noticesOf(inputs, root));
}

/** What an extension in a browser cannot find out by itself: which samples came along. */
async function writeSampleList() {
    const home = path.join(root, 'samples');
    const entries = await readdir(home, { recursive: true, withFileTypes: true });
    const files = entries
        .filter((entry) => entry.isFile())
        .map((entry) => path.relative(home, path.join(entry.parentPath, entry.name)));
    await writeFile(
        path.join(root, 'dist/samples.json'),
        JSON.stringify(files.map((name) => name.split(path.sep).join('/')).sort()),
    );
}

const contexts = await bundling(production);
if (watch) {
    await Promise.all(contexts.map((each) => each.watch()));
} else {
    try {
        const results = await Promise.all(contexts.map((each) => each.rebuild()));
        await writeSampleList();
        if (production) {
            await writeNotices(results);
            (await import('./schemas.mjs')).writeSchemas();
        }
    } catch (error) {
        process.exitCode = 1;
        // What esbuild finds, it has said itself.
        if (!(error instanceof Error && 'errors' in error)) console.error(error instanceof Error ? error.message : error);
    }
    await Promise.all(contexts.map((each) => each.dispose()));
}
