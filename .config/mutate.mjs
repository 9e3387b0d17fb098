/**
 * Whether the tests of a room would see a slip: mutants of its files, each run against the tests that reach the file, the nearest
 * first, until one fails.
 *
 *     npm run mutate -- ROOM [--sample 200] [--seed 1] [--seconds 60]
 *
 * ROOM is a folder or a file (`bench`, `shared/art/draw`, `language/lowering/number.ts`). Tests beyond so many seconds of what they
 * took when they ran last are not asked: what only they would see counts as survived.
 * Every survivor is printed with its place; out/mutants.json keeps all of the run. An hour of a core for each room: run it at night.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { sourceFiles } from '../tests/house/source-files.ts';
import { drawn, mutantsOf, wilson } from './mutants.mjs';
import { distancesTo, isTest, needsBundles, secondsOf } from './reach.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
        sample: { type: 'string', default: '200' },
        seed: { type: 'string', default: '1' },
        seconds: { type: 'string', default: '60' },
    },
});
const room = positionals[0];
if (room === undefined) {
    console.error('Which room? npm run mutate -- bench --sample 200 --seed 1');
    process.exit(2);
}
const folder = [room, `shared/${room}`].find((each) => existsSync(path.join(root, each))) ?? room;
const files = sourceFiles(folder).filter(({ path: file }) => /^(?:shared|language|server|extension)\//.test(file));
const all = files.flatMap(({ path: file, text }) => mutantsOf(file, text));
if (all.length === 0) {
    console.error(`There is nothing to mutate in ${folder}.`);
    process.exit(2);
}
const chosen = drawn(all, Number(values.sample), Number(values.seed));
const took = secondsOf();
const sound = new Map();

console.log(`${chosen.length} of the ${all.length} mutants of ${files.length} files in ${folder}, seed ${values.seed}.`);
const outcomes = [];
for (const mutant of chosen) {
    const outcome = await tryOut(mutant);
    outcomes.push({ ...mutant, outcome });
    if (outcome === 'survived' || outcome === 'no test') console.log(`${outcome}: ${show(mutant)}`);
}
mkdirSync(path.join(root, 'out'), { recursive: true });
writeFileSync(path.join(root, 'out', 'mutants.json'), JSON.stringify({ folder, seed: values.seed, outcomes }, null, 2));
const count = (...kinds) => outcomes.filter(({ outcome }) => kinds.includes(outcome)).length;
const seen = count('seen', 'too long');
const { low, high } = wilson(seen, outcomes.length);
const percent = (share) => `${(100 * share).toFixed(0)} %`;
console.log(`| room | mutants | seen | of these too long | survived | no test | score | 95 % interval |
| --- | --- | --- | --- | --- | --- | --- | --- |
| ${folder} | ${outcomes.length} of ${all.length} | ${seen} | ${count('too long')} | ${count('survived')} | ${count('no test')} | ${percent(seen / outcomes.length)} | ${percent(low)} to ${percent(high)} |`);

/** The tests that are asked, in two goes: the nearest, and those farther off. */
function testsOf(file) {
    const reached = [...distancesTo([file])]
        .filter(([test]) => isTest(test) && !needsBundles(test))
        .sort(([a, near], [b, far]) => near - far || (took.get(a) ?? 1) - (took.get(b) ?? 1));
    let left = Number(values.seconds);
    const asked = reached.filter(([test], index) => {
        left -= took.get(test) ?? 1;
        return index < 3 || left > 0;
    });
    const nearest = Math.min(...asked.map(([, distance]) => distance));
    const goes = [asked.filter(([, distance]) => distance === nearest), asked.filter(([, distance]) => distance > nearest)];
    return goes.map((go) => go.map(([test]) => test)).filter((go) => go.length > 0);
}

async function tryOut(mutant) {
    const goes = await soundTestsOf(mutant);
    if (goes.length === 0) return 'no test';
    for (const go of goes) {
        const outcome = await run(mutant, go);
        if (outcome !== 'survived') return outcome;
    }
    return 'survived';
}

/** The tests of a mutant's file. Those that fail by themselves, or time out on a busy machine, would have every mutant seen: they are left out. */
async function soundTestsOf({ file, start, end }) {
    const known = sound.get(file);
    if (known !== undefined) return known;
    const text = sourceOf(file).slice(start, end);
    const found = [];
    for (const go of testsOf(file)) {
        if ((await run({ file, start, end, text }, go)) === 'survived') found.push(go);
        else console.log(`left out, since one of them fails without any mutant: ${go.join(' ')}`);
    }
    sound.set(file, found);
    return found;
}

function sourceOf(file) {
    return readFileSync(path.join(root, file), 'utf8');
}

function run({ file, start, end, text }, go) {
    const usual = go.reduce((sum, test) => sum + (took.get(test) ?? 1), 0);
    return new Promise((resolve) => {
        const child = spawn(
            process.execPath,
            ['node_modules/vitest/vitest.mjs', 'run', '-c', '.config/vitest.ts', '--bail', '1', '--retry', '0', ...go],
            {
                cwd: root,
                stdio: 'ignore',
                env: { ...process.env, KERFBOOK_BUNDLES: 'no', KERFBOOK_MUTANT: JSON.stringify({ file, start, end, text }) },
            },
        );
        const timer = setTimeout(
            () => {
                child.kill('SIGKILL');
                resolve('too long');
            },
            60_000 + 8000 * usual,
        );
        child.on('exit', (code) => {
            clearTimeout(timer);
            resolve(code === 0 ? 'survived' : 'seen');
        });
    });
}

function show({ file, line, start, end, text }) {
    const source = sourceOf(file);
    const was = source.slice(start, end).replaceAll(/\s+/g, ' ');
    const row = source.split('\n')[line - 1].trim();
    return `${file}:${line}  ${was.length > 60 ? `${was.slice(0, 60)}…` : was} → ${text || 'nothing'}  in  ${row}`;
}
