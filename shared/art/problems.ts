import { partitionPoint } from '../quantity/partition-point';
import type { ArtProblem } from './art';
import { limits } from './limits';

/** Gathers what a maker should know of an art file, with places, and without drowning them in repetitions. */
export class Problems {
    private readonly found: ArtProblem[] = [];
    private readonly counts = new Map<string, number>();
    private readonly told = new Set<string>();
    private lineStarts: number[] | undefined;

    constructor(private readonly text: string) {}

    /** `offset` counts UTF-16 units of the file. */
    add(kind: ArtProblem['kind'], subject: string, message: string, offset?: number): void {
        const key = `${kind} ${subject}`;
        // A use or a clip path may draw one element many times.
        const told = `${key} ${offset} ${message}`;
        if (this.told.has(told)) return;
        if (this.told.size < limits.problems * limits.places) this.told.add(told);
        const count = (this.counts.get(key) ?? 0) + 1;
        this.counts.set(key, count);
        if (count > limits.places || this.found.length >= limits.problems) return;
        this.found.push({ kind, subject, message, ...(offset === undefined ? {} : this.place(offset)) });
    }

    /** All problems in the order in which they were met, then how many more there were of each sort. */
    all(): ArtProblem[] {
        const more: ArtProblem[] = [];
        for (const problem of new Map(this.found.map((entry) => [`${entry.kind} ${entry.subject}`, entry])).values()) {
            const count = this.counts.get(`${problem.kind} ${problem.subject}`)!;
            if (count <= limits.places) continue;
            const { kind, subject } = problem;
            more.push({ kind, subject, message: `The same holds for ${count - limits.places} more places.` });
        }
        return [...this.found, ...more];
    }

    private place(offset: number): { line: number; column: number } {
        this.lineStarts ??= startsOfLines(this.text);
        const starts = this.lineStarts;
        const line = partitionPoint(starts.length, (index) => starts[index]! <= offset);
        return { line, column: offset - starts[line - 1]! + 1 };
    }
}

function startsOfLines(text: string): number[] {
    const starts = [0];
    for (let i = 0; i < text.length; i++) {
        const code = text.charCodeAt(i);
        if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
    }
    return starts;
}
