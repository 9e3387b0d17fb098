import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Length, places } from './harness/places.ts';
import { describeAll, type Results } from './harness/results.ts';
import { runHost } from './host/run.ts';
import { personFiles, runPerson } from './person/run.ts';
import { takePictures } from './pictures/run.ts';
import { runSpeed } from './speed/run.ts';

/** The tests inside the editor, or a list of a person's. */
type Part = 'host' | readonly string[];

/**
 * Two rows of suites side by side, each with an editor of its own: most of a test is waiting for the editor to draw. They are
 * to take about the same time, since the whole takes as long as the longer one. Within a row the order is always the same, so
 * that a fault is found again.
 */
const rows: readonly (readonly Part[])[] = [
    [
        [
            ...[
                'squiggles',
                'bench-view',
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
            ],
            'keys-alone',
            'samples',
        ],
        'host',
    ],
    [
        [
            'coupon',
            'compare',
            'week',
            'new-recipe',
            'art',
            'walkthrough',
            'print',
            'tablet',
            'run',
            'one-recipe',
            'messages',
            'trust',
            'browser-only',
        ],
    ],
];

/** Runs what is asked for; the exit code. */
export async function runSuites(args: readonly string[]): Promise<number> {
    const wordAfter = (option: string) => (args.includes(option) ? args[args.indexOf(option) + 1] : undefined);
    const [row, only] = [wordAfter('--row'), wordAfter('--only')];
    const desktop = args.includes('--desktop');
    const length = args.includes('--all') ? 'all' : args.includes('--longer') ? 'longer' : 'often';
    if (row !== undefined) return runRow(Number(row), length);
    if (!args.includes('--built')) execFileSync(process.execPath, [join(places.root, '.config/build.mjs')], { stdio: 'inherit' });
    if (args.includes('speed')) {
        await withWorkshop((workshop) => runSpeed(workshop, (file) => readFileSync(join(workshop, file), 'utf8')));
        return 0;
    }
    if (args.includes('pictures')) {
        await withWorkshop((workshop) => takePictures(workshop, (file) => readFileSync(join(workshop, file), 'utf8')));
        return 0;
    }
    mkdirSync(places.out, { recursive: true });
    rmSync(places.shots, { recursive: true, force: true });
    mkdirSync(places.shots, { recursive: true });
    const asked = args.filter((arg) => arg === 'host' || arg === 'person');
    const parts: Part[] = [
        ...(asked.includes('person') ? [] : ['host' as const]),
        ...(asked.includes('host') ? [] : [personFiles]),
    ];
    const inRows = asked.length !== 1 && only === undefined && !desktop;
    const results = inRows ? await runRows(args) : await runParts(parts, { desktop, only, length });
    process.stdout.write(describeAll(results));
    return results.tests.length === 0 || results.tests.some(({ error }) => error !== undefined) ? 1 : 0;
}

const reportOf = (row: number) => join(places.out, `row-${row}.json`);

/** Both rows at once, each in a process of its own. */
async function runRows(args: readonly string[]): Promise<Results> {
    const both = await Promise.all(
        rows.map(async (_, row): Promise<Results> => {
            rmSync(reportOf(row), { force: true });
            const command = [join(places.editorTests, 'run.mjs'), ...args, '--row', String(row)];
            const child = spawn(process.execPath, command, { stdio: 'inherit' });
            const code = await new Promise((resolve) => child.on('close', resolve));
            try {
                return JSON.parse(readFileSync(reportOf(row), 'utf8'));
            } catch {
                const error = `Its process ended with ${code} and without a report.`;
                return { tests: [{ title: `row ${row} of the suites`, milliseconds: 0, error }], times: [] };
            }
        }),
    );
    return { tests: both.flatMap(({ tests }) => tests), times: both.flatMap(({ times }) => times) };
}

async function runRow(row: number, length: Length): Promise<number> {
    // All of those in the host are short.
    const parts = (rows[row] ?? []).filter((part) => part !== 'host' || length !== 'longer');
    writeFileSync(reportOf(row), JSON.stringify(await runParts(parts, { length })));
    return 0;
}

interface How {
    readonly desktop?: boolean;
    readonly only?: string | undefined;
    readonly length: Length;
}

async function runParts(parts: readonly Part[], { desktop = false, only, length }: How): Promise<Results> {
    const all: Results[] = [];
    for (const part of parts) {
        all.push(
            await withWorkshop((workshop) =>
                part === 'host' ? runHost(workshop, desktop, only) : runPerson(workshop, part, only, length),
            ),
        );
    }
    return { tests: all.flatMap(({ tests }) => tests), times: all.flatMap(({ times }) => times) };
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
