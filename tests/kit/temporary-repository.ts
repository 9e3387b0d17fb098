import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished, vi } from 'vitest';
import { run } from '../../server/cli/run';

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

    /** A command line, run in this folder or in one below: in this process, since a new one costs a second each time. */
    async kerfbook(args: readonly string[], below = '.'): Promise<Run> {
        const here = process.cwd();
        const said = { out: '', err: '' };
        const listen = (stream: NodeJS.WriteStream, to: 'out' | 'err') =>
            vi.spyOn(stream, 'write').mockImplementation((text) => {
                said[to] += String(text);
                return true;
            });
        const ears = [listen(process.stdout, 'out'), listen(process.stderr, 'err')];
        process.chdir(path.join(this.folder, below));
        try {
            return { code: await run([...args]), ...said };
        } finally {
            process.chdir(here);
            for (const ear of ears) ear.mockRestore();
        }
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

/** One for a single test, gone with it. */
export function temporaryRepository(files: Readonly<Record<string, string>> = {}): TemporaryRepository {
    const one = new TemporaryRepository(files);
    onTestFinished(() => one.remove());
    return one;
}
