import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const cli = path.join(root, 'dist', 'cli.cjs');
let out: string;

interface Run {
    readonly code: number;
    readonly stdout: string;
    readonly stderr: string;
}

function run(...args: string[]): Promise<Run> {
    return new Promise((resolve) => {
        execFile(process.execPath, [cli, ...args], { cwd: root, maxBuffer: 64 * 1024 * 1024 }, (error, stdout, stderr) => {
            resolve({ code: typeof error?.code === 'number' ? error.code : 0, stdout, stderr });
        });
    });
}

beforeAll(() => {
    if (!existsSync(cli)) throw new Error('The command line is not built: npm run build');
    out = mkdtempSync(path.join(tmpdir(), 'kerfbook-out-'));
});
afterAll(() => rmSync(out, { recursive: true, force: true }));

describe('kerfbook on the command line', () => {
    it('check: the good samples pass, strictly', async () => {
        const { code, stdout } = await run(
            'check',
            '--strict',
            'samples/gate-sign.kerf',
            'samples/tide-coaster.kerf',
            'samples/heron-tray.kerf',
        );
        expect(stdout).toContain('3 files: 0 errors, 0 warnings');
        expect(code).toBe(0);
    });

    it('check: the faulty sample fails with at least ten different findings, as text and as JSON', async () => {
        const text = await run('check', 'samples/heron-tray-faulty.kerf');
        expect(text.code).toBe(1);
        expect(text.stdout).toMatch(/^samples\/heron-tray-faulty\.kerf:\d+:\d+: error: .* \[not-mirrored\]$/m);
        const json = JSON.parse((await run('check', '--format', 'json', 'samples/heron-tray-faulty.kerf')).stdout);
        const rules = new Set(json.findings.map((finding: { rule: string }) => finding.rule));
        expect(rules.size).toBeGreaterThanOrEqual(10);
        expect(json.counts.error).toBeGreaterThan(0);
    });

    it('plan: one recipe as JSON', async () => {
        const { code, stdout } = await run('plan', 'samples/heron-tray.kerf');
        expect(code).toBe(0);
        const plan = JSON.parse(stdout);
        expect(plan).toMatchObject({ schema: 1, recipe: { name: 'heron-tray' } });
        const pocket = plan.steps.find((step: { name: string }) => step.name === 'pocket');
        expect(pocket.laser.settings.reached).toBe(true);
        expect(pocket.laser.machine ?? pocket.times.machine).toBeGreaterThan(60);
    });

    it('build: files for machine and bench, and nothing when an error is open', async () => {
        const good = await run('build', 'samples/heron-tray.kerf', '--out', out);
        expect(good.code).toBe(0);
        const svg = readFileSync(path.join(out, 'heron-tray', 'setup-1-tray.svg'), 'utf8');
        expect(svg).toContain('width="300mm" height="200mm" viewBox="0 0 300 200"');
        expect(existsSync(path.join(out, 'heron-tray', 'setup-2-bird.ngc'))).toBe(true);
        const bad = await run('build', 'samples/heron-tray-faulty.kerf', '--out', out);
        expect(bad.code).toBe(1);
        expect(existsSync(path.join(out, 'heron-tray-faulty'))).toBe(false);
    });

    it('build: exits with 1 when a machine file cannot be written, and says which', async () => {
        const folder = path.join(out, 'long');
        mkdirSync(folder);
        const file = path.join(folder, 'wide.kerf');
        const stock = readFileSync(path.join(root, 'samples/workshop.kerf'), 'utf8');
        const step =
            'engrave e on b { rectangle 500 x 250 mm tone 50 % pitch 0.05 mm passes 400 air off allow file-too-long because "tried" }';
        writeFileSync(
            file,
            `${stock}\nrecipe wide "Wide" { revision 1 make 1 laser shed\n blank b { of walnut-12 size 560 x 300 mm grain along width }\n ${step} }\n`,
        );
        const { code, stderr, stdout } = await run('build', file, '--out', folder);
        expect(stderr).toContain('setup-1-b.ngc is not written: it would be longer than any machine reads.');
        expect(stdout).toContain('job-sheet.html');
        expect(code).toBe(1);
    });

    it.each([
        [['frobnicate'], 'There is no command frobnicate.'],
        [['check', 'no-such-file.kerf'], 'There is no no-such-file.kerf.'],
        [['check', 'README.md'], 'is not a recipe file'],
        [['check', '--format', 'xml', 'samples'], '--format'],
        [['plan', '--recipe', 'nobody', 'samples/heron-tray.kerf'], 'There is no recipe nobody.'],
    ])('says what is wrong with %j and exits with 2', async (args, message) => {
        const { code, stderr } = await run(...args);
        expect(stderr).toContain(message);
        expect(code).toBe(2);
    });
});
