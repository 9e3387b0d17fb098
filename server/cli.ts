import { build } from './cli/build';
import { check } from './cli/check';
import { UsageError } from './cli/open-files';
import { plan } from './cli/plan';
import { serve } from './cli/serve';

const help = `kerfbook: recipes for engraved, filled and inlaid wood

  kerfbook check [FILE or FOLDER ...] [--format text|json] [--strict]
      what would go wrong; exit code 1 if there is an error (--strict: or a warning)
  kerfbook plan [FILE ...] [--recipe NAME] [--shapes]
      everything that was worked out, as JSON
  kerfbook build [FILE ...] [--recipe NAME] [--out FOLDER] [--force]
      real-size drawings for each set-up of the machine, job sheet, shopping list
  kerfbook serve
      the language server over standard input and output, for any editor

Without a file, every recipe below this folder is taken.
`;

const commands: Readonly<Record<string, (args: string[]) => Promise<number>>> = { check, plan, build, serve };

async function main([name, ...args]: string[]): Promise<number> {
    if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
        process.stdout.write(help);
        return name === undefined ? 2 : 0;
    }
    const command = commands[name];
    if (command === undefined) {
        process.stderr.write(`There is no command ${name}.\n\n${help}`);
        return 2;
    }
    try {
        return await command(args);
    } catch (error) {
        if (!(error instanceof UsageError) && !isArgumentError(error)) throw error;
        process.stderr.write(`${error.message}\n`);
        return 2;
    }
}

function isArgumentError(error: unknown): error is Error {
    return error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
}

// A reader that stops early (head, less) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
void main(process.argv.slice(2)).then((code) => {
    process.exitCode = code;
});
