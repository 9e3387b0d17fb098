import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { places } from './harness/places.ts';
import { runHost } from './host/run.ts';
import { runPerson } from './person/run.ts';
import { runSpeed } from './speed/run.ts';

/** Runs what is asked for (all of it by default); the exit code. */
export async function runSuites(args: readonly string[]): Promise<number> {
    const wanted: string[] = args.filter((arg) => arg === 'host' || arg === 'person');
    const only = args.includes('--only') ? args[args.indexOf('--only') + 1] : undefined;
    const asked = (suite: string) => wanted.length === 0 || wanted.includes(suite);
    execFileSync(process.execPath, [join(places.root, '.config/build.mjs')], { stdio: 'inherit' });
    if (args.includes('speed')) {
        await withWorkshop((workshop) => runSpeed(workshop, (file) => readFileSync(join(workshop, file), 'utf8')));
        return 0;
    }
    const results = [
        ...(asked('host') ? await withWorkshop((workshop) => runHost(workshop, args.includes('--desktop'), only)) : []),
        ...(asked('person') ? await withWorkshop((workshop) => runPerson(workshop, only)) : []),
    ];
    const failed = results.filter(({ error }) => error !== undefined).length;
    process.stdout.write(`${results.length - failed} passed, ${failed} failed\n`);
    return failed > 0 || results.length === 0 ? 1 : 0;
}

/** The tests change and write files, so each suite works on a copy of the samples. */
async function withWorkshop<T>(work: (workshop: string) => Promise<T>): Promise<T> {
    const home = mkdtempSync(join(tmpdir(), 'kerfbook-editor-'));
    try {
        const workshop = join(home, 'workshop');
        cpSync(places.samples, workshop, { recursive: true });
        return await work(workshop);
    } finally {
        rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
}
