/**
 * The tests nearest to what has been changed, in about twenty seconds: every test that imports a changed file, then those that
 * reach it through other files, the nearest first, as long as the time lasts.
 *
 *     npm run near [-- FILE …] [-- --all] [-- --seconds 12]
 *
 * Without names: what differs from the last commit. With --all: every test that reaches a change, however long that takes.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { distancesTo, isLong, isTest, needsBundles, secondsOf } from './reach.mjs';

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
const tests = [...distances].filter(([file]) => isTest(file) && !isLong(file)).map(([file, distance]) => ({ file, distance }));
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
    {
        cwd: root,
        stdio: 'inherit',
        env: { ...process.env, KERFBOOK_BUNDLES: chosen.some(({ file }) => needsBundles(file)) ? 'yes' : 'no' },
    },
);
if (left > 0) console.log(`${left} more reach it from farther off: npm run near -- --all`);
process.exit(status ?? 1);

function changedFiles() {
    const git = (...words) => execFileSync('git', words, { cwd: root, encoding: 'utf8' }).split('\n').filter(Boolean);
    return [...git('diff', '--name-only', 'HEAD'), ...git('ls-files', '--others', '--exclude-standard')];
}

/**
 * Those that import a change or name it whatever they take, then the next as long as the time lasts; of equally near ones the short
 * first. Where none imports it, as many are equally far off as import what does: those too only as long as the time lasts.
 */
function withinTime(found) {
    const took = secondsOf();
    const cost = ({ file }) => (took.get(file) ?? UNKNOWN) + IMPORTS;
    const inOrder = found.toSorted((a, b) => a.distance - b.distance || cost(a) - cost(b));
    let spent = 0;
    return inOrder.filter((test, at) => {
        spent += cost(test) / WORKERS;
        return at === 0 || test.distance <= 1 || spent <= seconds;
    });
}
