import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Run, runIn } from '../kit/run-in';

const root = fileURLToPath(new URL('../..', import.meta.url));
const cli = path.join(root, 'dist', 'cli.cjs');
let made: string;

/** The command line as it is built, in a process of its own. */
function started(...args: string[]): Promise<Run> {
    return new Promise((resolve) => {
        execFile(process.execPath, [cli, ...args], { cwd: root, maxBuffer: 64 * 1024 * 1024 }, (error, out, err) => {
            resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
        });
    });
}

const run = (...args: string[]): Promise<Run> => runIn(root, args);

beforeAll(() => {
    if (!existsSync(cli)) throw new Error('The command line is not built: npm run build');
    made = mkdtempSync(path.join(tmpdir(), 'kerfbook-out-'));
});
afterAll(() => rmSync(made, { recursive: true, force: true }));

describe('kerfbook on the command line', () => {
    it('check: the good samples pass, strictly', async () => {
        const { code, out } = await started(
            'check',
            '--strict',
            'samples/gate-sign.kerf',
            'samples/tide-coaster.kerf',
            'samples/heron-tray.kerf',
        );
        expect(out).toContain('3 files: 0 errors, 0 warnings');
        expect(code).toBe(0);
    });

    it('check: the faulty sample fails with at least ten different findings, as text and as JSON', async () => {
        const text = await started('check', 'samples/heron-tray-faulty.kerf');
        expect(text.code).toBe(1);
        expect(text.out).toMatch(/^samples\/heron-tray-faulty\.kerf:\d+:\d+: error: .* \[not-mirrored\]$/m);
        const json = JSON.parse((await run('check', '--format', 'json', 'samples/heron-tray-faulty.kerf')).out);
        const rules = new Set(json.findings.map((finding: { rule: string }) => finding.rule));
        expect(rules.size).toBeGreaterThanOrEqual(10);
        expect(json.counts.error).toBeGreaterThan(0);
    });

    it('plan: one recipe as JSON', async () => {
        const { code, out } = await run('plan', 'samples/heron-tray.kerf');
        expect(code).toBe(0);
        const plan = JSON.parse(out);
        expect(plan).toMatchObject({ schema: 1, recipe: { name: 'heron-tray' } });
        const pocket = plan.steps.find((step: { name: string }) => step.name === 'pocket');
        expect(pocket.laser.settings.reached).toBe(true);
        expect(pocket.laser.machine ?? pocket.times.machine).toBeGreaterThan(60);
    });

    it('build: files for machine and bench, and nothing when an error is open', async () => {
        const good = await run('build', 'samples/heron-tray.kerf', '--out', made);
        expect(good.code).toBe(0);
        const svg = readFileSync(path.join(made, 'heron-tray', 'setup-1-tray.svg'), 'utf8');
        expect(svg).toContain('width="300mm" height="200mm" viewBox="0 0 300 200"');
        expect(existsSync(path.join(made, 'heron-tray', 'setup-2-bird.ngc'))).toBe(true);
        const bad = await run('build', 'samples/heron-tray-faulty.kerf', '--out', made);
        expect(bad.code).toBe(1);
        expect(existsSync(path.join(made, 'heron-tray-faulty'))).toBe(false);
    });

    it('build: exits with 1 when a machine file cannot be written, and says which', async () => {
        const folder = path.join(made, 'long');
        mkdirSync(folder);
        const file = path.join(folder, 'wide.kerf');
        const stock = readFileSync(path.join(root, 'samples/workshop.kerf'), 'utf8');
        const step =
            'engrave e on b { rectangle 500 x 250 mm tone 50 % pitch 0.05 mm passes 400 air off allow file-too-long because "tried" }';
        writeFileSync(
            file,
            `${stock}\nrecipe wide "Wide" { revision 1 make 1 laser shed\n blank b { of walnut-12 size 560 x 300 mm grain along width }\n ${step} }\n`,
        );
        const { code, err, out } = await run('build', file, '--out', folder);
        expect(err).toContain('setup-1-b.ngc is not written: it would be longer than any machine reads.');
        expect(out).toContain('job-sheet.html');
        expect(code).toBe(1);
    });

    it.each([
        [['frobnicate'], 'There is no command frobnicate.'],
        [['check', 'no-such-file.kerf'], 'There is no no-such-file.kerf.'],
        [['check', 'README.md'], 'is not a recipe file'],
        [['check', '--format', 'xml', 'samples'], '--format'],
        [['plan', '--recipe', 'nobody', 'samples/heron-tray.kerf'], 'There is no recipe nobody.'],
    ])('says what is wrong with %j and exits with 2', async (args, message) => {
        const { code, err } = await run(...args);
        expect(err).toContain(message);
        expect(code).toBe(2);
    });
});
