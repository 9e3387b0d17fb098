import { run } from './cli/run';

// A reader that stops early (head, less) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
void run(process.argv.slice(2)).then((code) => {
    process.exitCode = code;
});
