/**
 * Whether the tests of a room would see a slip: mutants of its files, each run against the tests that come by it, the nearest first,
 * until one fails.
 *
 *     npm run mutate -- ROOM … [--sample 200] [--seed 1] [--seconds 20] [--minutes 60]
 *
 * ROOM is a folder or a file (`bench`, `shared/art/draw`, `language/lowering/number.ts`). First every test that reaches one of the files
 * is run without any mutant awake: that shows what it comes by and what it takes, and one that fails is not asked. Tests beyond so many
 * seconds are not asked either: what only they would see counts as survived. What has been found is kept in out/mutants, where a run
 * that was broken off goes on. The rooms take turns, so that after so many minutes each has a sample of its own, of the size that is
 * said then. Every survivor is printed with its place.
 */
import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { sourceFiles } from '../tests/house/source-files.ts';
import { drawn, mutantsOf, wilson } from './mutants.mjs';
import { distancesTo, isTest, needsBundles, secondsOf } from './reach.mjs';
import { startResident } from './resident.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
/** Tests that took longer than this when they ran last are not asked, s; those that import a mutant's file are. */
const LONGEST = 12;
/** A file whose tests took longer is asked only for those that come by the mutant, s. */
const BY_TEST = 1;
/** With a mutant, a test may work this many times as long as without, and so many seconds more. */
const LIMIT = { times: 4, more: 3 };

const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
        sample: { type: 'string', default: '200' },
        seed: { type: 'string', default: '1' },
        seconds: { type: 'string', default: '20' },
        minutes: { type: 'string', default: 'Infinity' },
    },
});
if (positionals.length === 0) {
    console.error('Which room? npm run mutate -- bench --sample 200 --seed 1');
    process.exit(2);
}
const rooms = positionals.map((room) => sampleOf(room));
const mutants = rooms.flatMap(({ chosen }) => chosen);
for (const [at, mutant] of mutants.entries()) mutant.id = at + 1;
// Of several at one place only the first notes that it was come by.
for (const [{ id }, ...others] of Map.groupBy(mutants, ({ file, start, end }) => `${file}:${start}:${end}`).values())
    for (const other of others) other.sameAs = id;
const texts = new Map();
const kept = keptFindings();
const resident = await startResident(mutants);
const distances = new Map([...new Set(mutants.map(({ file }) => file))].map((file) => [file, distancesTo([file])]));
await runAllAsleep();
await tryOut();
for (const room of rooms) report(room);
await resident.end();
process.exit(0);

function sampleOf(room) {
    const folder = [room, `shared/${room}`].find((each) => existsSync(path.join(root, each))) ?? room;
    const files = sourceFiles(folder).filter(({ path: file }) => /^(?:shared|language|server|extension)\//.test(file));
    const all = files.flatMap(({ path: file, text }) => mutantsOf(file, text));
    if (all.length === 0) {
        console.error(`There is nothing to mutate in ${folder}.`);
        process.exit(2);
    }
    const chosen = drawn(all, Number(values.sample), Number(values.seed));
    console.log(`${chosen.length} of the ${all.length} mutants of ${files.length} files in ${folder}, seed ${values.seed}.`);
    return { folder, all, chosen };
}

/** What an earlier run over the same mutants has found; it goes with any change of a source or a test. */
function keptFindings() {
    const hash = createHash('sha256').update(JSON.stringify([positionals, values.sample, values.seed]));
    for (const { path: file, text } of sourceFiles('shared', 'language', 'server', 'extension', 'tests'))
        hash.update(file + text);
    const file = path.join(root, 'out', 'mutants', `${hash.digest('hex').slice(0, 12)}.jsonl`);
    mkdirSync(path.dirname(file), { recursive: true });
    const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n').filter(Boolean) : [];
    const found = { asleep: new Map(), outcomes: new Map() };
    for (const line of lines.map((text) => JSON.parse(text)))
        line.mutant === undefined ? found.asleep.set(line.test, line) : found.outcomes.set(line.mutant, line);
    return { ...found, add: (line) => appendFileSync(file, `${JSON.stringify(line)}\n`) };
}

async function runAllAsleep() {
    const took = secondsOf();
    const reaching = new Set([...distances.values()].flatMap((each) => [...each.keys()].filter(isTest)));
    const isNear = (test) => [...distances.values()].some((each) => each.get(test) === 1);
    const isShort = (test) => (took.get(test) ?? 1) < LONGEST || isNear(test);
    const asked = [...reaching].filter((test) => !needsBundles(test) && !looksAtDate(test) && isShort(test));
    console.log(`${asked.length} of the ${reaching.size} files of tests that reach them are asked.`);
    for (const test of asked.sort((a, b) => (took.get(a) ?? 1) - (took.get(b) ?? 1))) {
        if (kept.asleep.has(test)) continue;
        const { failed, seconds, by, errors, reached, tests, outside } = await resident.run(test);
        if (failed)
            console.log(`not asked, since it fails by itself: ${test}: ${[...by.map(({ message }) => message), ...errors][0]}`);
        const found = { failed, seconds, reached, tests: longEnough(seconds, tests), outside };
        kept.asleep.set(test, found);
        kept.add({ test, ...found });
    }
}

/** Which test comes by what is needed only of files that take long. */
function longEnough(seconds, tests) {
    return seconds < BY_TEST ? {} : tests;
}

/** What a test asks of `performance` it is answered by a clock that stands (resident.mjs); for other clocks it may fail by itself. */
function looksAtDate(test) {
    return /hrtime|Date\.now\(\)/.test(textOf(test));
}

function textOf(file) {
    texts.has(file) || texts.set(file, readFileSync(path.join(root, file), 'utf8'));
    return texts.get(file);
}

/** One of each room in turn: what is drawn first is a sample too. */
async function tryOut() {
    const end = performance.now() + 60_000 * Number(values.minutes);
    for (let at = 0; at < Number(values.sample); at++) {
        for (const mutant of rooms.flatMap(({ chosen }) => chosen[at] ?? [])) {
            if (performance.now() > end) return;
            const before = kept.outcomes.get(mutant.id);
            if (before !== undefined && before.outcome !== 'survived') continue;
            const found = await outcomeOf(mutant, before?.asked ?? []);
            if (found === undefined) continue;
            kept.outcomes.set(mutant.id, found);
            kept.add({ mutant: mutant.id, ...found });
        }
    }
    await lookForTraces();
}

function report({ folder, all, chosen }) {
    // Only the first so many of which each was tried are a fair sample.
    const untried = chosen.findIndex(({ id }) => !kept.outcomes.has(id));
    const tried = untried < 0 ? chosen : chosen.slice(0, untried);
    const outcomes = tried.map((mutant) => ({ ...kept.outcomes.get(mutant.id), mutant }));
    for (const { mutant, outcome } of outcomes)
        if (outcome === 'survived' || outcome === 'no test') console.log(`${outcome}: ${show(mutant)}`);
    const count = (...kinds) => outcomes.filter(({ outcome }) => kinds.includes(outcome)).length;
    const seen = count('seen', 'too long');
    const { low, high } = wilson(seen, outcomes.length);
    const percent = (share) => `${(100 * share).toFixed(1)} %`;
    console.log(`| room | mutants | seen | of these too long | survived | no test | score | 95 % interval |
| --- | --- | --- | --- | --- | --- | --- | --- |
| ${folder} | ${outcomes.length} of ${all.length} | ${seen} | ${count('too long')} | ${count('survived')} | ${count('no test')} | ${percent(seen / outcomes.length)} | ${percent(low)} to ${percent(high)} |`);
}

/** Tests that have seen a mutant pass without it afterwards: nothing stays of one for the next. */
async function lookForTraces() {
    const saw = [...new Set([...kept.outcomes.values()].flatMap(({ test }) => test ?? []))].slice(0, 20);
    const failing = [];
    for (const test of saw) if ((await resident.run(test)).failed) failing.push(test);
    console.log(
        `${saw.length - failing.length} of ${saw.length} files of tests that saw a mutant pass again without it. ${failing.join(' ')}`,
    );
}

/** Undefined where all that may be asked have been asked before. */
async function outcomeOf(mutant, before) {
    const asked = testsOf(mutant);
    if (asked.length === 0) return before.length === 0 ? { outcome: 'no test' } : undefined;
    const fresh = asked.filter(({ test }) => !before.includes(test));
    if (fresh.length === 0) return undefined;
    let seconds = 0;
    for (const { test, only, cost } of fresh) {
        const limit = LIMIT.more + LIMIT.times * Math.max(cost, only === undefined ? 0 : kept.asleep.get(test).seconds);
        const run = await resident.run(test, { on: mutant.id, only, limit });
        seconds += run.seconds;
        if (run.stopped) return { outcome: 'too long', seconds, test };
        if (run.failed && (await passesAgain(test)))
            return { outcome: 'seen', seconds, test, by: run.by[0]?.name ?? run.errors[0] };
    }
    return { outcome: 'survived', seconds, asked: asked.map(({ test }) => test) };
}

/** Whether a test that saw a mutant passes without one in the same worker; asked when it sees one first. One that does not is not asked again. */
async function passesAgain(test) {
    const found = kept.asleep.get(test);
    found.again ??= !(await resident.run(test)).failed;
    if (!found.again) console.log(`not asked, since it fails when it is run again: ${test}`);
    found.failed ||= !found.again;
    return found.again;
}

/** The tests that come by a mutant: those that import its file or name it, then those of its room, then the others; the short ones first. */
function testsOf({ id, sameAs = id, file }) {
    const far = distances.get(file);
    const name = path.basename(file).replace(/\.tsx?$/, '');
    const named = new RegExp(`\\b${name}\\b`);
    const [first, second] = file.split('/');
    const room = `tests/${first === 'shared' ? second : first}/`;
    const rankOf = (test) => {
        if (far.get(test) === 1 || named.test(textOf(test))) return 0;
        return test.startsWith(room) ? 1 : 2;
    };
    const found = [...kept.asleep]
        .filter(([, { failed, reached }]) => !failed && reached.includes(sameAs))
        .map(([test, { seconds, tests, outside }]) => {
            const each = Object.entries(tests);
            const those = each.filter(([, { reached }]) => reached.includes(sameAs));
            const all = each.reduce((sum, [, test]) => sum + test.seconds, 0);
            // What is come by outside of any test, in a module or a hook, concerns them all.
            if (outside.includes(sameAs) || all < BY_TEST) return { test, cost: seconds };
            const cost = seconds * (those.reduce((sum, [, test]) => sum + test.seconds, 0) / all) + 0.3;
            return { test, only: those.map(([name]) => name), cost };
        })
        .sort((a, b) => rankOf(a.test) - rankOf(b.test) || a.cost - b.cost);
    let left = Number(values.seconds);
    return found.filter(({ cost }, at) => {
        left -= cost;
        return at === 0 || left > 0;
    });
}

function show({ file, line, was, becomes }) {
    const source = textOf(file);
    const short = was.replaceAll(/\s+/g, ' ');
    return `${file}:${line}  ${short.length > 60 ? `${short.slice(0, 60)}…` : short} → ${becomes}  in  ${source.split('\n')[line - 1].trim()}`;
}
