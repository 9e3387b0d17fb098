/** The command line in a repository of 2,000 commits that all touch the one file: what `history` and `diff` take, git's own work counted in. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { report, reportLoad } from './measure';

const commits = 2000;
const runs = 7;
const root = fileURLToPath(new URL('../../..', import.meta.url));
const cli = path.join(root, 'dist', 'cli.cjs');
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-commits-'));
const file = 'heron-tray.kerf';

function git(args: readonly string[], input = ''): void {
    const { status, stderr } = spawnSync('git', args, { cwd: folder, input, encoding: 'utf8' });
    if (status !== 0) throw new Error(stderr);
}

/** The heron tray with its issue 2 in the first tenth of the commits and issue 3 from then on, with another comment in each. */
function stream(): string {
    const last = readFileSync(path.join(folder, file), 'utf8');
    const parts: string[] = [];
    for (let index = 0; index < commits; index++) {
        const then = index < commits / 10 ? last.replace(/^(\s+issue) 3$/m, '$1 2') : last;
        const text = index === commits - 1 ? last : `${then}// ${index}\n`;
        const bytes = Buffer.byteLength(text);
        parts.push(
            `commit refs/heads/main\ncommitter A <a@shop.example> ${1_700_000_000 + 3600 * index} +0000\ndata 1\nc\n`,
            index === 0 ? 'from refs/heads/main^0\n' : '',
            `M 100644 inline ${file}\ndata ${bytes}\n${text}\n`,
        );
    }
    return parts.join('');
}

interface Taken {
    readonly clock: number;
    /** Of the processor, with all that was started. */
    readonly processor: number;
}

/** By the shell's own count of what its children took. */
function timed(args: readonly string[]): Taken {
    const begin = performance.now();
    const { stdout, stderr, status } = spawnSync('sh', ['-c', '"$@" > /dev/null; times', 'sh', process.execPath, cli, ...args], {
        cwd: folder,
        encoding: 'utf8',
    });
    const clock = performance.now() - begin;
    if (status !== 0) throw new Error(stderr);
    const seconds = [
        ...stdout
            .trim()
            .split('\n')[1]!
            .matchAll(/(\d+)m([\d.]+)s/g),
    ].map(([, m, s]) => 60 * Number(m) + Number(s));
    return { clock, processor: 1000 * seconds.reduce((sum, each) => sum + each, 0) };
}

function middle(values: readonly number[]): number {
    return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

try {
    reportLoad();
    cpSync(path.join(root, 'samples'), folder, { recursive: true });
    git(['init', '-q', '-b', 'main']);
    git(['add', '.']);
    git(['-c', 'user.name=A', '-c', 'user.email=a@shop.example', '-c', 'commit.gpgsign=false', 'commit', '-q', '-m', 'begin']);
    git(['fast-import', '--quiet'], stream());
    git(['reset', '-q', '--hard']);
    for (const args of [['help'], ['history', file], ['diff', `HEAD~${commits - 1}`]]) {
        const taken = Array.from({ length: runs }, () => timed(args));
        const processor = middle(taken.map((each) => each.processor));
        report(
            `kerfbook ${args.join(' ')}`,
            middle(taken.map(({ clock }) => clock)),
            `${processor.toFixed(0)} ms of the processor`,
        );
    }
} finally {
    rmSync(folder, { recursive: true, force: true });
}
