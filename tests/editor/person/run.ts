import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Mocha from 'mocha';
import { AT_LENGTH, type Length } from '../harness/places.ts';
import { describeResult, type Results, runMocha } from '../harness/results.ts';

/** A person's suites, in the order in which they run when nothing else is said. */
export const personFiles: readonly string[] = [
    'squiggles',
    'bench-view',
    'both-faces',
    'day-book',
    'press',
    'round',
    'measure',
    'keyboard',
    'typing',
    'both-ways',
    'checklist',
    'looks',
    'restart',
    'coupon',
    'compare',
    'week',
    'new-recipe',
    'samples',
    'art',
    'walkthrough',
    'print',
    'tablet',
    'run',
    'one-recipe',
    'messages',
    'keys-alone',
    'trust',
    'browser-only',
];

/** A person's view: a browser clicks and types in the workbench. Shots go to tests/editor/shots/. */
export async function runPerson(
    workshop: string,
    files: readonly string[],
    only: string | undefined,
    length: Length,
): Promise<Results> {
    // Names of files, with commas between them, or a part of a test's title.
    const chosen = files.filter((file) => only?.split(',').includes(file));
    const home = mkdtempSync(join(tmpdir(), 'kerfbook-person-'));
    process.env.KERFBOOK_HOME = home;
    process.env.KERFBOOK_WORKSHOP = workshop;
    const { session } = await import('./shared.ts');
    try {
        const mocha = new Mocha({
            retries: Number(process.env.KERFBOOK_RETRIES ?? 1),
            timeout: 150_000,
            reporter: Silent,
            rootHooks: {
                // How it looked when it went wrong tells more than what was waited for. A test that is tried again has not failed yet, so it is not asked for that.
                async afterEach(this: Mocha.Context) {
                    const test = this.currentTest;
                    if (test !== undefined && !test.isPassed())
                        await session.shotInFront(`failed-${test.title.replaceAll(/\W+/g, '-')}`).catch(() => undefined);
                },
            },
            ...(only === undefined || chosen.length > 0 ? ofLength(length) : { fgrep: only }),
        });
        for (const file of chosen.length > 0 ? chosen : files)
            mocha.addFile(fileURLToPath(new URL(`${file}.test.ts`, import.meta.url)));
        await mocha.loadFilesAsync();
        return await runMocha(mocha, (result) => process.stdout.write(describeResult(result)));
    } finally {
        await session.close();
        rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
}

function ofLength(length: Length): Mocha.MochaOptions {
    return length === 'all' ? {} : { fgrep: `(${AT_LENGTH})`, invert: length === 'often' };
}

class Silent extends Mocha.reporters.Base {
    override epilogue(): void {}
}
