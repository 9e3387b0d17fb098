import { version } from '../../package.json';
import { nearest } from '../../shared/recipe/nearest';
import { GitError } from '../git/run-git';
import { CannotOpen } from '../workshop/cannot-open';
import { CannotWrite } from '../writing/cannot-write';
import { complain, say, sayLine } from './say';
import type { CommandUsage } from './usage/command-usage';
import { helpOf, overview } from './usage/help';
import { asksForHelp } from './usage/read-args';
import { usages } from './usage/usages';
import { UsageError } from './usage-error';

type Command = (args: string[]) => Promise<number>;

/** Each brings along only what it needs: reading all of the program takes longer than most of the work. */
const commands: ReadonlyMap<string, () => Promise<Command>> = new Map([
    ['new', async () => (await import('./new')).newCommand],
    ['check', async () => (await import('./check')).check],
    ['plan', async () => (await import('./plan')).plan],
    ['build', async () => (await import('./build')).build],
    ['coupon', async () => (await import('./coupon')).coupon],
    ['diff', async () => (await import('./diff')).diff],
    ['show', async () => (await import('./show')).show],
    ['table', async () => (await import('./table')).table],
    ['week', async () => (await import('./week')).week],
    ['season', async () => (await import('./season')).season],
    ['history', async () => (await import('./history')).history],
    ['merge', async () => (await import('./merge')).merge],
    ['upgrade', async () => (await import('./upgrade')).upgrade],
    ['stock', async () => (await import('./stock')).stock],
    ['explain', async () => (await import('./explain')).explain],
    ['vocabulary', async () => (await import('./vocabulary')).vocabulary],
    ['lay', async () => (await import('./lay')).lay],
    ['curve', async () => (await import('./curve')).curve],
    ['format', async () => (await import('./format')).format],
    ['mcp', async () => (await import('./mcp/mcp')).mcp],
    ['completion', async () => (await import('./completion')).completion],
    ['serve', async () => (await import('./serve')).serve],
]);

/**
 * Runs one command line and says how it went: 0 well, 1 something was found, 2 it was not asked rightly or could not be written.
 * What it has to say goes to standard output, why it could not to standard error.
 */
export async function run([name, ...args]: string[]): Promise<number> {
    if (name === undefined || helpWords.has(name)) return sayHelp(name, args);
    if (name === '--version' || name === '-V') {
        sayLine(version);
        return 0;
    }
    try {
        const usage = usageNamed(name);
        if (asksForHelp(usage, args)) {
            say(helpOf(usage));
            return 0;
        }
        return await (await commands.get(name)!())(args);
    } catch (error) {
        complain(inWords(error));
        return 2;
    }
}

const helpWords: ReadonlySet<string> = new Set(['help', '--help', '-h']);

/** `kerfbook`, `kerfbook --help`, `kerfbook help check`. */
function sayHelp(asked: string | undefined, [name]: readonly string[]): number {
    try {
        say(asked === 'help' && name !== undefined ? helpOf(usageNamed(name)) : overview());
        return asked === undefined ? 2 : 0;
    } catch (error) {
        complain(inWords(error));
        return 2;
    }
}

/** @throws UsageError where there is no such command */
function usageNamed(name: string): CommandUsage {
    const usage = usages.find((each) => each.name === name);
    if (usage !== undefined) return usage;
    const near = nearest(name, commands.keys());
    throw new UsageError(
        `There is no command ${name}. ${near === undefined ? 'kerfbook --help lists them.' : `Do you mean ${near}?`}`,
    );
}

/** One line that a person can do something with; where the fault is ours, how to see more of it. */
function inWords(error: unknown): string {
    if ([UsageError, CannotOpen, CannotWrite, GitError].some((kind) => error instanceof kind)) return (error as Error).message;
    if (process.env.KERFBOOK_TRACE === 'yes') throw error;
    const { message, code, path: file } = error as NodeJS.ErrnoException;
    if (code !== undefined && file !== undefined) return `${file} cannot be read: ${readingFaults[code] ?? message}.`;
    return `Kerfbook made a mistake of its own: ${message ?? String(error)}. Set KERFBOOK_TRACE=yes to see where, and report it, please.`;
}

const readingFaults: Readonly<Record<string, string>> = {
    EACCES: 'you are not allowed to',
    EPERM: 'you are not allowed to',
    ENOENT: 'it is not there',
    EISDIR: 'it is a folder',
    ENOTDIR: 'part of its path is a file',
    ELOOP: 'its links go round in a circle',
    EMFILE: 'too many files are open',
};
