/**
 * Builds everything that runs from dist/: the extension, the bench view, the server, the command line.
 *
 *     node .config/build.mjs [--production] [--watch]
 */
import { bundling, generateParser } from './generated.mjs';

const watch = process.argv.includes('--watch');

try {
    generateParser();
} catch (error) {
    process.stderr.write(`${error.message}\n`);
    process.exit(1);
}
const contexts = await bundling(process.argv.includes('--production'));
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
