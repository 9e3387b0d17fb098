import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { type Run, runIn } from './run-in';

const cli = fileURLToPath(new URL('../../dist/cli.cjs', import.meta.url));

/**
 * Repositories as they are after their first commit, by their files: git is started for it once, and what each test has is a copy.
 * Starting it takes a large process longer than most of what the tests look at.
 */
const begun = new Map<string, string>();
process.once('exit', () => {
    for (const folder of begun.values()) rmSync(folder, { recursive: true, force: true });
});

/** Nothing of this goes on by itself behind a commit. */
const still = ['-c', 'gc.auto=0', '-c', 'maintenance.auto=false'];

/** A git repository of its own in a temporary folder, with settings of its own and nobody else's. */
export class TemporaryRepository {
    readonly folder = newFolder();
    private readonly env = {
        ...process.env,
        GIT_CONFIG_GLOBAL: '/dev/null',
        GIT_CONFIG_NOSYSTEM: '1',
        GIT_AUTHOR_NAME: 'A',
        GIT_AUTHOR_EMAIL: 'a@shop.example',
        GIT_COMMITTER_NAME: 'A',
        GIT_COMMITTER_EMAIL: 'a@shop.example',
    };

    /** @param files undefined for a folder that is no repository yet */
    constructor(files: Readonly<Record<string, string>> | undefined) {
        if (files === undefined) return;
        const key = JSON.stringify(files);
        const known = begun.get(key);
        if (known === undefined) {
            this.begin(files);
            const kept = newFolder();
            cpSync(this.folder, kept, { recursive: true });
            begun.set(key, kept);
        } else cpSync(known, this.folder, { recursive: true });
    }

    private begin(files: Readonly<Record<string, string>>): void {
        // Without the examples of hooks that git would lay beside it.
        this.git('init', '--quiet', '--template', '', '--initial-branch', 'main');
        mkdirSync(path.join(this.folder, '.git', 'hooks'));
        if (Object.keys(files).length === 0) return;
        this.write(files);
        this.commit('first');
    }

    git(...args: string[]): string {
        return execFileSync('git', args, { cwd: this.folder, env: this.env, encoding: 'utf8', stdio: 'pipe' });
    }

    write(files: Readonly<Record<string, string>>): void {
        for (const [name, text] of Object.entries(files)) {
            const file = path.join(this.folder, name);
            mkdirSync(path.dirname(file), { recursive: true });
            writeFileSync(file, text);
        }
    }

    /** Another one that is as this one is now. Settings that name this one's folder still do. */
    copy(): TemporaryRepository {
        const other = new TemporaryRepository(undefined);
        cpSync(this.folder, other.folder, { recursive: true, verbatimSymlinks: true });
        return other;
    }

    /** Everything that lies here, as one commit. */
    commit(message: string): void {
        this.git('add', '--all');
        this.git(...still, 'commit', '--quiet', '--allow-empty', '--message', message);
    }

    /** A command line, run in this folder or in one below. */
    kerfbook(args: readonly string[], below = '.'): Promise<Run> {
        return runIn(path.join(this.folder, below), args);
    }

    /** The built command line as git's settings would name it. */
    get command(): string {
        if (!existsSync(cli)) throw new Error('The command line is not built: npm run build');
        return `"${process.execPath}" "${cli}"`;
    }

    remove(): void {
        rmSync(this.folder, { recursive: true, force: true });
    }
}

function newFolder(): string {
    return realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-repository-')));
}

/** One for a single test, gone with it. */
export function temporaryRepository(files: Readonly<Record<string, string>> = {}): TemporaryRepository {
    const one = new TemporaryRepository(files);
    onTestFinished(() => one.remove());
    return one;
}
