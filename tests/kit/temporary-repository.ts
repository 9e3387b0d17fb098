import { execFile, execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const cli = fileURLToPath(new URL('../../dist/cli.cjs', import.meta.url));

export interface Run {
    readonly code: number;
    readonly out: string;
    readonly err: string;
}

/** A git repository of its own in a temporary folder, with settings of its own and nobody else's. */
export class TemporaryRepository {
    readonly folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-repository-')));
    private readonly env = {
        ...process.env,
        GIT_CONFIG_GLOBAL: '/dev/null',
        GIT_CONFIG_NOSYSTEM: '1',
        GIT_AUTHOR_NAME: 'A',
        GIT_AUTHOR_EMAIL: 'a@shop.example',
        GIT_COMMITTER_NAME: 'A',
        GIT_COMMITTER_EMAIL: 'a@shop.example',
    };

    constructor(files: Readonly<Record<string, string>> = {}) {
        if (!existsSync(cli)) throw new Error('The command line is not built: npm run build');
        this.git('init', '--quiet', '--initial-branch', 'main');
        if (Object.keys(files).length > 0) {
            this.write(files);
            this.commit('first');
        }
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

    /** Everything that lies here, as one commit. */
    commit(message: string): void {
        this.git('add', '--all');
        this.git('commit', '--quiet', '--allow-empty', '--message', message);
    }

    /** The built command line, run in this folder or in one below. */
    kerfbook(args: readonly string[], below = '.'): Promise<Run> {
        const cwd = path.join(this.folder, below);
        return new Promise((resolve) => {
            execFile(process.execPath, [cli, ...args], { cwd, env: this.env, maxBuffer: 64 * 1024 * 1024 }, (error, out, err) =>
                resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err }),
            );
        });
    }

    /** What kerfbook's own words for git would be given on this machine: the node that runs this, and the built file. */
    get command(): string {
        return `"${process.execPath}" "${cli}"`;
    }

    remove(): void {
        rmSync(this.folder, { recursive: true, force: true });
    }
}
