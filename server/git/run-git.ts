import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { type Message, phrase } from '../../shared/recipe/phrase';

/** Something git could not do; its message is for a person. */
/** Its words are for a person. */
export class GitError extends Error {
    declare readonly message: Message;

    constructor(message: Message) {
        super(message);
    }
}

/**
 * Said to git every time: no pager, paths are paths and not patterns, the index of somebody else's
 * work is not touched, no command of the repository's own settings is started to watch files, and
 * nothing is fetched from anywhere.
 */
const always = [
    '--no-pager',
    '--literal-pathspecs',
    '--no-optional-locks',
    '-c',
    'core.quotePath=false',
    '-c',
    'core.fsmonitor=false',
    '-c',
    'protocol.allow=never',
];

/** Variables by which a hook or an outer git would point at another repository (git rev-parse --local-env-vars). */
const pointing =
    /^GIT_(?:ALTERNATE_OBJECT_DIRECTORIES|COMMON_DIR|CONFIG|CONFIG_COUNT|CONFIG_PARAMETERS|DIR|GRAFT_FILE|IMPLICIT_WORK_TREE|INDEX_FILE|INTERNAL_SUPER_PREFIX|NO_REPLACE_OBJECTS|OBJECT_DIRECTORY|PREFIX|REPLACE_REF_BASE|SHALLOW_FILE|WORK_TREE|EXTERNAL_DIFF)$/;

export interface GitRun {
    readonly folder: string;
    readonly args: readonly string[];
    readonly input?: string;
    /** Settings that hold for this run, over those of the repository. Any name will do, one with an `=` in it too. */
    readonly settings?: Readonly<Record<string, string>>;
    /** The index to read, where it is not the repository's usual one. */
    readonly index?: string;
    /** Most bytes of its answer. */
    readonly most?: number;
}

/** How a run ended; `code` is git's own, or why it could not end by itself. */
export interface GitAnswer {
    readonly code: number | 'too-large';
    readonly out: Buffer;
    readonly complaint: string;
}

/** Runs git with fixed words, never through a shell. Throws only where there is no git. */
export function runGit({ folder, args, input = '', settings = {}, index, most = 64 * 1024 * 1024 }: GitRun): Promise<GitAnswer> {
    const env = { ...environment(settings), ...(index !== undefined && { GIT_INDEX_FILE: index }) };
    return new Promise((resolve, reject) => {
        const child = execFile(
            'git',
            [...always, ...args],
            { cwd: folder, env, encoding: 'buffer', maxBuffer: most, windowsHide: true },
            (error, out, err) => {
                const complaint = err.toString('utf8').trim().split('\n')[0] ?? '';
                if (error === null) resolve({ code: 0, out, complaint });
                else if (typeof error.code === 'number') resolve({ code: error.code, out, complaint });
                else if (error.code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER') resolve({ code: 'too-large', out, complaint });
                else reject(gone(error));
            },
        );
        // A git that ends before it has read everything says why by its code.
        child.stdin?.on('error', () => {});
        child.stdin?.end(input);
    });
}

/** Starts git with fixed words, to be asked more than once. Its complaints are not read. */
export function startGit(folder: string, args: readonly string[]): ChildProcess {
    const stdio = ['pipe', 'pipe', 'ignore'] as const;
    return spawn('git', [...always, ...args], { cwd: folder, env: environment({}), stdio: [...stdio], windowsHide: true });
}

/** Why git is not running. */
export function gone(error: Error & { readonly code?: unknown }): GitError {
    if (error.code === 'ENOENT') return new GitError(phrase`There is no git on this machine.`);
    return new GitError(phrase`git could not be run: ${error.message}`);
}

function environment(settings: Readonly<Record<string, string>>): NodeJS.ProcessEnv {
    return {
        ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !pointing.test(name))),
        LC_ALL: 'C',
        GIT_TERMINAL_PROMPT: '0',
        GIT_NO_LAZY_FETCH: '1',
        ...asVariables(settings),
    };
}

/** How git takes settings from outside (git-config(1), ENVIRONMENT). */
function asVariables(settings: Readonly<Record<string, string>>): Record<string, string> {
    const all = Object.entries(settings);
    const pairs = all.flatMap(([key, value], index) => [
        [`GIT_CONFIG_KEY_${index}`, key],
        [`GIT_CONFIG_VALUE_${index}`, value],
    ]);
    return { GIT_CONFIG_COUNT: String(all.length), ...Object.fromEntries(pairs) };
}
