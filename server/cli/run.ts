import { GitError } from '../git/run-git';
import { CannotOpen } from '../workshop/cannot-open';
import { CannotWrite } from '../writing/cannot-write';
import { complain, say } from './say';
import { UsageError } from './usage-error';

const help = `kerfbook: recipes for engraved, filled and inlaid wood

  kerfbook new NAME --technique engraving|filled|inlay|picture [--board B] [--laser L] [--veneer V] [--art FILE]
      [--size 120x80] [--in FOLDER]
      a recipe to begin with, from what the shop has or from built-in woods and lasers; size in mm;
      without --art a drawing is written to be drawn over
  kerfbook check [FILE or FOLDER ...] [--since REVISION] [--strict] [--format FORMAT]
      what would go wrong; exit code 1 if there is an error (--strict: or a warning);
      --since: only in files that a change since that revision reaches, through what they use and their art too;
      FORMAT is text, json, sarif, junit, checkstyle, annotations (workflow commands) or markdown
  kerfbook plan [FILE ...] [--recipe NAME] [--shapes] [--start DATE]
      everything that was worked out, as JSON
  kerfbook build [FILE ...] [--recipe NAME] [--out FOLDER] [--force] [--clean] [--dry-run]
      real-size drawings for each set-up of the machine, job sheet, shopping list; what you changed by hand since is kept,
      and the new one lies beside it; --force: also over that, and although an error is open;
      --clean: takes away what an earlier build left; --dry-run: only says what would be written and taken away
  kerfbook coupon BOARD LASER [FILE ...] [--rungs 16] [--passes 3] [--pitch 0.1] [--powers 20,40,60,80]
      [--speeds 100,200,400] [--out FOLDER] [--force] [--clean] [--dry-run]
      a ladder of numbered squares to burn and measure, gentlest dose first, for a board or veneer and a laser:
      drawing, machine file, tables to fill in; --passes: the most of a square; pitch in mm; powers in per cent or
      speeds in mm/s take turns, with both each power is burnt at each speed; --force: also write over tables
  kerfbook diff BEFORE AFTER
  kerfbook diff REVISION [REVISION] [FILE ...]
      [--format text|markdown|json|html] [--recipe NAME] [--exit-code] [--as FILE]
      what differs between two versions of recipes, and what follows from it: two files, or revisions of a
      git repository (one: against the work tree; main... is where this branch left main);
      --exit-code: 1 if something differs
  kerfbook table [FILE ...] [--base NAME | --recipes A,B] [--all] [--format text|markdown|csv|json|html]
      a recipe and all that is based on it side by side, or the recipes named: what differs; --all: and what does not
  kerfbook history [FILE ...] [--recipe NAME] [--last 5] [--format text|markdown|csv|json|html]
      the last runs that are written down: what was planned by the revision that was followed, what was measured,
      and whether depths drift over time
  kerfbook show FILE [--all] [--as FILE]
      a file as plain lines, for tools that compare lines: what is written and what follows for fit and depth;
      --all: settings, amounts, times and money too; --as: it is a copy of that one, beside which its art lies
  kerfbook merge BASE OURS THEIRS [--marker-size 7] [--path FILE]
      git's merge driver for recipes: statement by statement instead of line by line; OURS becomes the merge;
      exit code: how many conflicts are left between markers, 129 if it could not be done; --path: what it is called
  kerfbook upgrade [FILE or FOLDER ...] [--dry-run]
      writes words of earlier editions of the language as they are spelled today; --dry-run: says what it would rewrite
  kerfbook serve
      the language server over standard input and output, for any editor

Without a file, every recipe below this folder is taken.
`;

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
    ['history', async () => (await import('./history')).history],
    ['merge', async () => (await import('./merge')).merge],
    ['upgrade', async () => (await import('./upgrade')).upgrade],
    ['serve', async () => (await import('./serve')).serve],
]);

/**
 * Runs one command line and says how it went: 0 well, 1 something was found, 2 it was not asked rightly or could not be written.
 * What it has to say goes to standard output, why it could not to standard error.
 */
export async function run([name, ...args]: string[]): Promise<number> {
    if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
        say(help);
        return name === undefined ? 2 : 0;
    }
    const command = commands.get(name);
    if (command === undefined) {
        complain(`There is no command ${name}.`, `\n${help}`);
        return 2;
    }
    try {
        return await (await command())(args);
    } catch (error) {
        if (!isForPerson(error)) throw error;
        complain(error.message);
        return 2;
    }
}

/** Whether its message is all that a person needs. */
function isForPerson(error: unknown): error is Error {
    const kinds = [UsageError, CannotOpen, CannotWrite, GitError];
    return kinds.some((kind) => error instanceof kind) || isArgumentError(error);
}

function isArgumentError(error: unknown): error is Error {
    return error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
}
