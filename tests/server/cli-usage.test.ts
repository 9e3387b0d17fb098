import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { completionScript } from '../../server/cli/usage/completion-script';
import { readArgs } from '../../server/cli/usage/read-args';
import { checkUsage, usages } from '../../server/cli/usage/usages';
import { type Run, runIn } from '../kit/run-in';

const root = fileURLToPath(new URL('../..', import.meta.url));
const run = (...args: string[]): Promise<Run> => runIn(root, args);
let folder: string;

beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-usage-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('help', () => {
    it('lists every command, and each tells its options, an example and its exit codes', async () => {
        const { out, code } = await run('--help');
        expect(code).toBe(0);
        for (const { name } of usages) expect(out).toContain(`  kerfbook ${name} `);
        for (const { name, options } of usages) {
            const help = await run(name, '--help');
            expect(help.code).toBe(0);
            expect(help.out).toBe((await run('help', name)).out);
            for (const option of Object.keys(options)) expect(help.out).toContain(`  --${option}`);
            expect(help.out).toMatch(/\nExamples?\n {2}\S/);
            expect(help.out).toContain('\nExit code\n  0 ');
            expect(Math.max(...help.out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
        }
    });

    it('has examples that the commands would take', () => {
        for (const usage of usages)
            for (const { line } of usage.examples) {
                const [program, name, ...args] = line.replace(/^source <\((.*)\)$/, '$1').split(/\s+/);
                expect([program, name]).toEqual(['kerfbook', usage.name]);
                expect(() => readArgs(usage, args)).not.toThrow();
            }
    });

    it('says which Kerfbook it is, as the package does', async () => {
        const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string };
        expect(await run('--version')).toEqual({ code: 0, out: `${version}\n`, err: '' });
    });

    it('is no value of an option: a revision may be called anything', () => {
        expect(readArgs(checkUsage, ['--since', '--help']).values.since).toBe('--help');
    });
});

describe('what was mistyped', () => {
    it.each([
        [['chek'], 'There is no command chek. Do you mean check?'],
        [['frobnicate'], 'There is no command frobnicate. kerfbook --help lists them.'],
        [['help', 'chek'], 'There is no command chek. Do you mean check?'],
        [['check', '--strct'], 'check has no option --strct. Do you mean --strict?'],
        [['check', '-s'], 'check has no option -s. kerfbook check --help lists its options.'],
        [['check', '--strict=yes'], '--strict takes no value.'],
        [['build', '--recipe'], '--recipe needs a value: --recipe NAME.'],
        [
            ['check', '--format', 'jsn'],
            '--format is one of text, json, sarif, junit, markdown, annotations, checkstyle. Do you mean json?',
        ],
        [['check', '--format', 'constructor'], '--format is one of text, json'],
        [['check', '--__proto__'], 'check has no option --__proto__.'],
        [['new', 'Sign', '--technique', 'fill'], '--technique is one of engraving, filled, inlay, picture.'],
        [['new', 'Sign'], 'Say --technique: engraving, filled, inlay, picture.'],
        [['completion', 'bsh'], 'Say for which shell: bash, zsh, fish. Do you mean bash?'],
        [['constructor'], 'There is no command constructor.'],
    ])('%j', async (args, message) => {
        const { code, err, out } = await run(...args);
        expect(err).toContain(message);
        expect(out).toBe('');
        expect(code).toBe(2);
    });
});

it('a fault of the system is told in words, without a trace', async () => {
    const { err, code } = await runIn(folder, ['new', 'Sign', '--technique', 'engraving', '--in', '/dev/null/deep']);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).not.toMatch(/ENO|EACC|syscall| at /);
    expect(code).toBe(2);
});

describe('a recipe from standard input', () => {
    const sample = path.join(root, 'samples', 'heron-tray.kerf');

    async function fed(text: string, args: readonly string[]): Promise<Run> {
        const stream = Readable.from([Buffer.from(text)]);
        const input = vi.spyOn(process, 'stdin', 'get').mockReturnValue(stream as unknown as typeof process.stdin);
        try {
            return await runIn(path.join(root, 'samples'), args);
        } finally {
            input.mockRestore();
        }
    }

    it('is checked as it stands there, with what lies beside it', async () => {
        const text = readFileSync(sample, 'utf8');
        expect(await fed(text, ['check', '-'])).toEqual({ code: 0, out: '1 file: 0 errors, 0 warnings\n', err: '' });
        const broken = await fed(text.replace('walnut-12', 'walnut-99'), ['check', '-', '--as', 'heron-tray.kerf']);
        expect(broken.out).toMatch(/^heron-tray\.kerf:\d+:\d+: error: .*walnut-99/m);
        expect(broken.code).toBe(1);
    });

    it('is planned and shown', async () => {
        const text = readFileSync(sample, 'utf8');
        expect(JSON.parse((await fed(text, ['plan', '-'])).out)).toMatchObject({ recipe: { name: 'heron-tray' } });
        expect((await fed(text, ['show', '-'])).out).toContain('heron-tray');
    });

    it.each([
        [['check', '-', 'heron-tray.kerf'], 'Give either files or - for standard input.'],
        [['check', '--as', 'a.kerf', 'heron-tray.kerf'], '--as says where the text of standard input lies'],
        [['check', '-', '--as', 'notes.txt'], 'notes.txt is not the name of a recipe file'],
    ])('%j', async (args, message) => {
        const { err, code } = await fed('', args);
        expect(err).toContain(message);
        expect(code).toBe(2);
    });

    it('ends where it is longer than any recipe', async () => {
        const { err, code } = await fed(' '.repeat(4 * 1024 * 1024 + 1), ['check', '-']);
        expect(err).toContain('too large for a recipe');
        expect(code).toBe(2);
    });
});

describe('completion', () => {
    /** What bash would offer for a line that is being typed. */
    function offered(...words: string[]): string[] {
        writeFileSync(path.join(folder, 'completion.bash'), completionScript('bash', usages));
        const asked = words.map((word) => `'${word}'`).join(' ');
        const script = `source ./completion.bash; COMP_WORDS=(kerfbook ${asked}); COMP_CWORD=${words.length}; _kerfbook; printf '%s\\n' "\${COMPREPLY[@]}"`;
        return execFileSync('bash', ['-c', script], { cwd: folder, encoding: 'utf8' })
            .split('\n')
            .filter((line) => line !== '');
    }

    it('offers commands, then options, then the words of an option, in bash', () => {
        expect(offered('che')).toEqual(['check']);
        expect(offered('check', '--s')).toEqual(['--strict', '--since', '--staged']);
        expect(offered('check', '--format', 'j')).toEqual(['json', 'junit']);
        expect(offered('new', '--technique', '')).toEqual(['engraving', 'filled', 'inlay', 'picture']);
        expect(offered('check', '')).toEqual([]);
    });

    it('has every command and option in each shell', async () => {
        for (const shell of ['bash', 'zsh', 'fish']) {
            const { out, code } = await run('completion', shell);
            expect(code).toBe(0);
            for (const { name, options } of usages)
                for (const option of Object.keys(options)) expect(out).toMatch(new RegExp(`${name}.*${option}`));
        }
    });
});
