import { oneLine, plainText } from '../../shared/review/one-line';

// The only place of the command line that writes to a terminal: names, titles and paths come from strangers, so that nothing of
// them may steer it. A house test holds the others to it.

/** Says a report on standard output. Its lines stay; what steers a terminal becomes a space. */
export function say(report: string): void {
    // Tables in CSV end their lines by both characters (RFC 4180).
    process.stdout.write(
        report
            .split('\r\n')
            .map((part) => withoutCommands(plainText(part)))
            .join('\r\n'),
    );
}

export function sayLine(line: string): void {
    process.stdout.write(`${withoutCommands(oneLine(line))}\n`);
}

/** A report whose lines are meant as commands for a build service. */
export function sayCommands(report: string): void {
    process.stdout.write(plainText(report));
}

/** Says one line on standard error. @param more of our own, below it */
export function complain(line: string, more = ''): void {
    process.stderr.write(`${withoutCommands(oneLine(line))}\n${more}`);
}

/** Build services read commands out of what is said (`::add-mask::` at the beginning of a line, `##[group]`); a file's name can be one. */
function withoutCommands(text: string): string {
    return text.replaceAll(/^(\s*)::/gm, '$1: :').replaceAll('##[', '# #[');
}

/** Less than this is not worth a word, ms. */
const PATIENCE_MS = 1000;

/** How far something is, on a line of its own that is gone afterwards. Only a person at a terminal gets it. */
export class Progress {
    private readonly since = performance.now();
    private shown = '';

    constructor(private readonly what: string) {}

    /** @param part 0 to 1 */
    tell(part: number): void {
        if (!process.stderr.isTTY || performance.now() - this.since < PATIENCE_MS) return;
        const line = withoutCommands(oneLine(`${this.what}: ${Math.floor(part * 100)} %`));
        if (line === this.shown) return;
        this.shown = line;
        process.stderr.write(`\r${line}`);
    }

    end(): void {
        if (this.shown !== '') process.stderr.write(`\r${' '.repeat(this.shown.length)}\r`);
        this.shown = '';
    }
}
