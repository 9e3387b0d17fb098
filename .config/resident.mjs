/**
 * Vitest with one worker that stays. It has read and compiled every module once, with all mutants in it and asleep; before each file
 * of tests every module of ours is run anew, so that nothing is remembered from the mutant before.
 */
import { fork } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVitest } from 'vitest/node';
import { withSwitches } from './mutants.mjs';
import { isTest } from './reach.mjs';
import { kerfAsText, resolve, tabletScriptAsText } from './vitest.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = path.join(root, 'out', 'mutants');
/** Node gives no other way to the time that another process has worked: clock ticks of Linux, 100 a second. */
const TICK_S = 0.01;
const LOOK_MS = 250;
/** What a new worker may take on top, since it reads and compiles everything first, s. */
const COLD_S = 40;
/** A worker is changed after so many files, since what it has read never leaves it. */
const FILES_A_WORKER = 300;

/** @param mutants all that will be asked for, each with its number `id` from 1 on */
export async function startResident(mutants) {
    mkdirSync(folder, { recursive: true });
    const byFile = Map.groupBy(mutants, ({ file }) => file);
    const asleep = {
        name: 'mutants-asleep',
        enforce: 'pre',
        transform(code, id) {
            // How long something took on a busy machine says nothing of a mutant: in a test the clock stands, and all else it looks at counts.
            if (isTest(path.relative(root, id).replaceAll('\\', '/'))) return code.replaceAll('performance.now()', '0');
            const here = byFile.get(path.relative(root, id).replaceAll('\\', '/'));
            return here === undefined ? undefined : withSwitches(code, here);
        },
    };
    const stay = { worker: undefined, files: 0 };
    const vitest = await createVitest(
        {
            ...{ config: false, root, watch: false, reporters: [{}], cache: false, maxWorkers: 1, isolate: true },
            // What an earlier run has compiled has that one's mutants in it, by that one's numbers; the cache goes by the source and does not know.
            fsModuleCache: false,
            ...{ include: ['tests/**/*.test.{ts,tsx}'], exclude: ['tests/editor/**', 'tests/speed/**', '**/node_modules/**'] },
            setupFiles: ['tests/kit/forget-opened.ts', '.config/mutants-setup.ts'],
            // The worker is niced and the machine is busy: a clock on the wall says little. Its own time is looked at below.
            ...{ testTimeout: 180_000, hookTimeout: 180_000, teardownTimeout: 60_000 },
            env: { KERFBOOK_MUTANTS: folder },
            execArgv: ['--max-semi-space-size=64', '--min-semi-space-size=64'],
            pool: { name: 'staying', createPoolWorker: (options) => new StayingWorker(options, stay) },
        },
        { plugins: [kerfAsText, tabletScriptAsText, asleep], resolve },
    );
    await vitest.standalone();
    const [project] = vitest.projects;

    /**
     * Runs one file of tests, until the first that fails.
     * @param on number of the mutant that is awake, 0 for none
     * @param only names of the tests that are run, all of them where left out
     * @returns whether it failed, by which tests, what it took, and which mutants it came by; `stopped` where it took longer than `limit` seconds of its process
     */
    async function run(test, { on = 0, only = undefined, limit = Number.POSITIVE_INFINITY } = {}) {
        if (stay.files++ % FILES_A_WORKER === FILES_A_WORKER - 1) end(stay);
        writeFileSync(path.join(folder, 'now.json'), JSON.stringify({ on, only, count: mutants.length }));
        writeFileSync(path.join(folder, 'told.json'), '{}');
        const watched = watchWorker(stay, stay.worker === undefined ? limit + COLD_S : limit);
        const spec = project.createSpecification(path.join(root, test));
        const { testModules, unhandledErrors } = await vitest.runTestSpecifications([spec]);
        const { stopped, seconds } = watched.end();
        const module = testModules.find(({ moduleId }) => moduleId === path.join(root, test));
        const failed = !module?.ok() || unhandledErrors.length > 0;
        const by = [...(module?.children.allTests('failed') ?? [])].map((test) => ({
            name: test.fullName,
            message: test.result().errors?.[0]?.message ?? '',
        }));
        const errors = [...(module?.errors() ?? []), ...unhandledErrors].map(({ message }) => message);
        const { reached = [], tests = {}, outside = [] } = JSON.parse(readFileSync(path.join(folder, 'told.json'), 'utf8'));
        return { failed, stopped, seconds, by, errors, reached, tests, outside };
    }

    return {
        run,
        async end() {
            end(stay);
            await vitest.close();
        },
    };
}

function end(stay) {
    stay.worker?.kill('SIGKILL');
    stay.worker = undefined;
}

/** Stops the worker when it has worked longer than it may. */
function watchWorker(stay, limit) {
    let worker = stay.worker;
    let begun = secondsOf(worker);
    let seconds = 0;
    let stopped = false;
    const look = setInterval(() => {
        if (worker !== stay.worker) [worker, begun] = [stay.worker, 0];
        seconds = secondsOf(worker) - begun;
        if (seconds <= limit || stopped) return;
        stopped = true;
        end(stay);
    }, LOOK_MS);
    return {
        end() {
            clearInterval(look);
            return { stopped, seconds: stopped || worker !== stay.worker ? seconds : secondsOf(worker) - begun };
        },
    };
}

function secondsOf(worker) {
    if (worker?.pid === undefined || worker.exitCode !== null || worker.signalCode !== null) return 0;
    try {
        const words = readFileSync(`/proc/${worker.pid}/stat`, 'utf8').split(') ')[1].split(' ');
        return (Number(words[11]) + Number(words[12])) * TICK_S;
    } catch {
        return performance.now() / 1000;
    }
}

/** A worker of Vitest whose process outlives a run: it is started once, and what Vitest says at the end of a run is answered in its place. */
class StayingWorker {
    name = 'staying';
    cacheFs = true;

    constructor({ distPath, env, execArgv }, stay) {
        this.how = { distPath, env, execArgv };
        this.stay = stay;
        this.listeners = [];
    }

    async start() {
        const { distPath, env, execArgv } = this.how;
        this.begun = this.stay.worker !== undefined;
        const spawned = this.begun
            ? undefined
            : fork(path.join(distPath, 'workers', 'forks.js'), [], {
                  ...{ env, execArgv, stdio: ['ignore', 'ignore', 'ignore', 'ipc'], serialization: 'advanced' },
              });
        this.stay.worker ??= spawned;
        spawned?.once('exit', () => {
            if (this.stay.worker === spawned) this.stay.worker = undefined;
        });
        this.worker = this.stay.worker;
        this.worker.setMaxListeners(0);
    }

    async stop() {
        for (const [event, listener] of this.listeners) this.worker.off(event, listener);
    }

    send(message) {
        if (message.type === 'start' && this.begun) this.answer('started');
        else if (message.type === 'stop') this.answer('stopped');
        else if (this.worker.connected) this.worker.send(message);
    }

    answer(type) {
        setImmediate(() => {
            for (const [event, listener] of this.listeners)
                if (event === 'message') listener({ __vitest_worker_response__: true, type });
        });
    }

    on(event, listener) {
        this.listeners.push([event, listener]);
        this.worker.on(event, listener);
    }

    off(event, listener) {
        this.listeners = this.listeners.filter(([, each]) => each !== listener);
        this.worker.off(event, listener);
    }

    deserialize(data) {
        return data;
    }
}
