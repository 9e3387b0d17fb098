/**
 * `npm test`: builds, then runs every test but the benchmarks, the long fuzz, the long ones of the rooms (`npm run long`, which is
 * this with --long) and those in the editor that a shorter one stands for (`npm run editor:all`). Words behind it go to the tests
 * of the rooms, which then run alone. The last line counts all tests.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { installBeside } from './install-beside.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const isLong = process.argv[2] === '--long';
const report = path.join(root, 'out', isLong ? 'long.json' : 'unit.json');
const words = process.argv.slice(isLong ? 3 : 2);

/** Runs one part aloud; what it said and how it ended. */
async function run(title, args) {
    console.log(`\n== ${title}`);
    const begun = Date.now();
    const child = spawn(process.execPath, args, { cwd: root, stdio: ['inherit', 'pipe', 'inherit'] });
    let said = '';
    child.stdout.on('data', (text) => {
        process.stdout.write(text);
        said += text;
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    console.log(`(${title}: ${Math.round((Date.now() - begun) / 1000)} s)`);
    return { said, status };
}

function unitCounts() {
    try {
        const { numPassedTests, numFailedTests, numFailedTestSuites } = JSON.parse(readFileSync(report, 'utf8'));
        // A file that cannot be read has no tests that could fail.
        return [numPassedTests, Math.max(numFailedTests, Math.min(numFailedTestSuites, 1))];
    } catch {
        return [0, 1];
    }
}

function editorCounts(said) {
    const [, passed, failed] = said.trimEnd().match(/(\d+) passed, (\d+) failed$/) ?? [0, 0, 1];
    return [Number(passed), Number(failed)];
}

// Half of it is waiting for the network and for npm, so that it costs little beside the tests that do not need it.
const editorInstall = words.length === 0 && !isLong ? installBeside(path.join(root, 'tests/editor/install.mjs')) : undefined;
const build = await run('Building', ['.config/build.mjs']);
if (build.status !== 0) await end(build.status ?? 1);

mkdirSync(path.dirname(report), { recursive: true });
rmSync(report, { force: true });
const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
const unit = await run(isLong ? 'Long tests of the rooms' : 'Tests of every room', [
    'node_modules/vitest/vitest.mjs',
    'run',
    '-c',
    isLong ? '.config/vitest-long.ts' : '.config/vitest.ts',
    ...reporters,
    ...words,
]);
let [passed, failed] = unitCounts();
let status = unit.status ?? 1;
if (editorInstall !== undefined && status === 0) {
    const install = await editorInstall;
    if (install.status === 0) {
        const editor = await run('Tests in a real editor', ['tests/editor/run.mjs', '--built']);
        const counts = editorCounts(editor.said);
        passed += counts[0];
        failed += counts[1];
        status = editor.status ?? 1;
    } else {
        console.error(`\n== Installing the editor for the tests failed\n${install.said}`);
        failed += 1;
        status = 1;
    }
}
console.log(`${passed} passed, ${failed} failed`);
await end(status);

/** A half-done install would be in the way of the next one, so that it is let end. */
async function end(code) {
    if (editorInstall !== undefined) await editorInstall;
    process.exit(code);
}
