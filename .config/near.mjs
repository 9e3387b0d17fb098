/**
 * The tests nearest to what has been changed, in about twenty seconds: every test that imports a changed file, then those that
 * reach it through other files, the nearest first, as long as the time lasts.
 *
 *     npm run near [-- FILE …] [-- --all] [-- --seconds 12]
 *
 * Without names: what differs from the last commit. With --all: every test that reaches a change, however long that takes.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { importsOf, sourceFiles } from '../tests/house/source-files.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
/** Seconds that a file of which nothing is known takes, and that the imports of any file take on top. */
const UNKNOWN = 4;
const IMPORTS = 0.3;
const WORKERS = 2;

const args = process.argv.slice(2);
const all = args.includes('--all');
const seconds = args.includes('--seconds') ? Number(args[args.indexOf('--seconds') + 1]) : 12;
const named = args.filter((arg, index) => !arg.startsWith('--') && args[index - 1] !== '--seconds');

const changed = named.length > 0 ? named.map((file) => path.posix.normalize(file)) : changedFiles();
if (changed.length === 0) {
    console.log('Nothing differs from the last commit.');
    process.exit(0);
}
const distances = distancesTo(changed);
const tests = [...distances].filter(([file]) => isTest(file)).map(([file, distance]) => ({ file, distance }));
if (tests.length === 0) {
    console.log(`No test imports ${changed.join(', ')}, or names it.`);
    process.exit(0);
}
const chosen = all ? tests : withinTime(tests);
const left = tests.length - chosen.length;
console.log(`${chosen.length} of the ${tests.length} test files that reach the change${left > 0 ? ', the nearest' : ''}.`);
const { status } = spawnSync(
    process.execPath,
    ['node_modules/vitest/vitest.mjs', 'run', '-c', '.config/vitest.ts', ...chosen.map(({ file }) => file)],
    { cwd: root, stdio: 'inherit', env: { ...process.env, KERFBOOK_BUNDLES: chosen.some(needsBundles) ? 'yes' : 'no' } },
);
if (left > 0) console.log(`${left} more reach it from farther off: npm run near -- --all`);
process.exit(status ?? 1);

function changedFiles() {
    const git = (...words) => execFileSync('git', words, { cwd: root, encoding: 'utf8' }).split('\n').filter(Boolean);
    return [...git('diff', '--name-only', 'HEAD'), ...git('ls-files', '--others', '--exclude-standard')];
}

function isTest(file) {
    return /^tests\/(?!editor\/|speed\/).*\.test\.tsx?$/.test(file);
}

/** How many imports lie between each file and the nearest change; a test that only names a changed file is as near as one that imports it. */
function distancesTo(targets) {
    const files = sourceFiles('shared', 'language', 'server', 'extension', 'tests');
    const known = new Set(files.map((file) => file.path));
    const importers = new Map();
    for (const file of files) {
        for (const name of importsOf(file)) {
            const to = resolve(name, known);
            importers.set(to, [...(importers.get(to) ?? []), file.path]);
        }
    }
    const distances = new Map(targets.map((file) => [file, 0]));
    for (const target of targets.filter((file) => !known.has(file))) {
        for (const file of files)
            if (isTest(file.path) && file.text.includes(path.posix.basename(target))) distances.set(file.path, 1);
    }
    for (const [file, distance] of distances) {
        for (const next of importers.get(file) ?? []) if (!distances.has(next)) distances.set(next, distance + 1);
    }
    return distances;
}

function resolve(name, known) {
    return [name, `${name}.ts`, `${name}.tsx`, `${name}/index.ts`].find((file) => known.has(file)) ?? name;
}

/** Those nearest to the change whatever they take, then the next as long as the time lasts; of equally near ones the short first. */
function withinTime(found) {
    const nearest = Math.max(1, Math.min(...found.map(({ distance }) => distance)));
    const took = secondsOf();
    const cost = ({ file }) => (took.get(file) ?? UNKNOWN) + IMPORTS;
    const inOrder = found.toSorted((a, b) => a.distance - b.distance || cost(a) - cost(b));
    let spent = 0;
    return inOrder.filter((test) => {
        spent += cost(test) / WORKERS;
        return test.distance <= nearest || spent <= seconds;
    });
}

/** What each file took when it ran last. */
function secondsOf() {
    const seen = new Map();
    for (const file of globSync('node_modules/.vite/vitest/*/results.json', { cwd: root })) {
        const { projects = {} } = JSON.parse(readFileSync(path.join(root, file), 'utf8'));
        for (const { files } of Object.values(projects))
            for (const [test, { duration }] of Object.entries(files)) seen.set(test, duration / 1000);
    }
    return seen;
}

/** Whether a test starts what lies in dist/. */
function needsBundles({ file }) {
    return (
        existsSync(path.join(root, file)) &&
        /dist\/|temporaryRepository|TemporaryRepository/.test(readFileSync(path.join(root, file), 'utf8'))
    );
}
