import { movedJob, type TickBook, type Ticks } from './ticks';

interface WrittenRun {
    readonly uri: string;
    readonly job: string;
    readonly ticks: Ticks;
    /** Absent for a run that has its file to itself. */
    readonly text?: string;
    /** How often the text stood in the file once it had been written: two runs of a day may read alike. */
    readonly count: number;
    present: boolean;
}

/** Runs written since the window was opened: their ticks come back when text or file is taken away again, and go with redo. */
export class WrittenRuns {
    private runs: WrittenRun[] = [];

    constructor(private readonly book: TickBook) {}

    /** A run has been written: its ticks go. */
    add(uri: string, job: string, text: string, whole: string): void {
        this.runs.push({ uri, job, text, ticks: this.book.of(job), count: occurrences(text, whole), present: true });
        this.book.reset(job);
    }

    /** A run has been written into a file of its own: its ticks go. */
    addFile(uri: string, job: string): void {
        this.runs.push({ uri, job, ticks: this.book.of(job), count: 1, present: true });
        this.book.reset(job);
    }

    /** Files lie elsewhere now. */
    move(movedTo: (uri: string) => string): void {
        this.runs = this.runs.map((run) => ({ ...run, uri: movedTo(run.uri), job: movedJob(run.job, movedTo) }));
    }

    /** Files have been taken away, or are there again. True if ticks have changed. */
    filesChanged(uris: readonly string[], present: boolean): boolean {
        const here = this.runs.filter((run) => run.text === undefined && run.present !== present && uris.includes(run.uri));
        for (const run of here) this.turn(run, present);
        return here.length > 0;
    }

    /** A file has become another by undo, redo or by what was taken back. True if ticks have changed. */
    changed(uri: string, whole: string): boolean {
        let any = false;
        for (const run of this.runs) {
            if (run.uri !== uri || run.text === undefined || run.text === '') continue;
            const present = occurrences(run.text, whole) >= run.count;
            if (present === run.present) continue;
            this.turn(run, present);
            any = true;
        }
        return any;
    }

    private turn(run: WrittenRun, present: boolean): void {
        run.present = present;
        if (present) this.book.reset(run.job);
        // What was ticked since stays ticked.
        else this.book.restore(run.job, { ...run.ticks, ...this.book.of(run.job) });
    }
}

function occurrences(text: string, whole: string): number {
    return text === '' ? 0 : whole.split(text).length - 1;
}
