import { partitionPoint } from '../quantity/partition-point';
import type { Message } from '../recipe/phrase';
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
    add(kind: ArtProblem['kind'], subject: string, message: Message, offset?: number): void {
        // A use or a clip path may draw one element many times.
        const told = `${kind} ${subject} ${offset} ${message}`;
        if (this.told.has(told)) return;
        if (this.told.size < limits.problems * limits.places) this.told.add(told);
        const count = (this.counts.get(message) ?? 0) + 1;
        if (count > 1 || this.counts.size < limits.problems) this.counts.set(message, count);
        if (count > limits.places || this.found.length >= limits.problems) return;
        this.found.push({ kind, subject, message, ...(offset === undefined ? {} : this.place(offset)) });
    }

    /** All problems in the order in which they were met; the last one of each message says of how many more places it holds. */
    all(): ArtProblem[] {
        const last = new Map(this.found.map(({ message }, at) => [message, at]));
        const told = new Map<string, number>();
        for (const { message } of this.found) told.set(message, (told.get(message) ?? 0) + 1);
        return this.found.map((problem, at) => {
            const { message } = problem;
            const more = (this.counts.get(message) ?? 0) - told.get(message)!;
            return last.get(message) === at && more > 0 ? { ...problem, more } : problem;
        });
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
