import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, beforeEach, type RunnerTestCase } from 'vitest';

/** What the modules with mutants in them look at (mutants.mjs), and what is asked for (resident.mjs). */
interface Mutants {
    on: number;
    readonly reached: Uint8Array;
}

const folder = process.env.KERFBOOK_MUTANTS!;
const { on, only, count } = JSON.parse(readFileSync(path.join(folder, 'now.json'), 'utf8')) as {
    on: number;
    only?: string[];
    count: number;
};
const asked = only && new Set(only);
const kept = globalThis as { kerfMutants?: Mutants };
kept.kerfMutants ??= { on, reached: new Uint8Array(count + 1) };
const mutants = kept.kerfMutants;
mutants.on = on;
mutants.reached.fill(0);

const whole = new Set<number>();
const outside = new Set<number>();
const tests: Record<string, { seconds: number; reached: number[] }> = {};
let failed = false;
let begun = 0;

/** What was come by since this was asked last. */
function newlyReached(): number[] {
    const found = [...mutants.reached.keys()].filter((id) => mutants.reached[id] === 1);
    mutants.reached.fill(0);
    for (const id of found) whole.add(id);
    return found;
}

function nameOf(task: RunnerTestCase): string {
    return task.suite === undefined ? task.name : [...suitesOf(task), task.name].join(' > ');
}

function suitesOf(task: { suite?: RunnerTestCase['suite'] }): string[] {
    return task.suite === undefined ? [] : [...suitesOf(task.suite), task.suite.name];
}

beforeEach(({ task, skip }) => {
    if (failed || (asked && !asked.has(nameOf(task as RunnerTestCase)))) skip();
    begun = performance.now();
    for (const id of newlyReached()) outside.add(id);
});

afterEach(({ task }) => {
    if (task.result?.state === 'fail') failed = true;
    tests[nameOf(task as RunnerTestCase)] = { seconds: (performance.now() - begun) / 1000, reached: newlyReached() };
});

afterAll(() => {
    for (const id of newlyReached()) outside.add(id);
    const found = on === 0 ? { reached: [...whole], outside: [...outside], tests } : {};
    writeFileSync(path.join(folder, 'told.json'), JSON.stringify(found));
});
