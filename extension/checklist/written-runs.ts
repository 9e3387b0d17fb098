import type { TickBook, Ticks } from './ticks';

interface WrittenRun {
    readonly uri: string;
    readonly job: string;
    readonly ticks: Ticks;
    readonly text: string;
    /** How often the text stood in the file once it had been written: two runs of a day may read alike. */
    readonly count: number;
    present: boolean;
}

/** Runs written since the window was opened: their ticks come back when undo takes the text out, and go again with redo. */
export class WrittenRuns {
    private runs: WrittenRun[] = [];

    constructor(private readonly book: TickBook) {}

    /** A run has been written: its ticks go. */
    add(uri: string, job: string, text: string, whole: string): void {
        this.runs.push({ uri, job, text, ticks: this.book.of(job), count: occurrences(text, whole), present: true });
        this.book.reset(job);
    }

    /** A file has become another by undo, redo or by what was taken back. True if ticks have changed. */
    changed(uri: string, whole: string): boolean {
        let any = false;
        for (const run of this.runs) {
            if (run.uri !== uri || run.text === '') continue;
            const present = occurrences(run.text, whole) >= run.count;
            if (present === run.present) continue;
            run.present = present;
            any = true;
            if (present) this.book.reset(run.job);
            // What was ticked since stays ticked.
            else this.book.restore(run.job, { ...run.ticks, ...this.book.of(run.job) });
        }
        return any;
    }
}

function occurrences(text: string, whole: string): number {
    return text === '' ? 0 : whole.split(text).length - 1;
}
