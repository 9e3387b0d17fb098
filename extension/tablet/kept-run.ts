import type { TabletJob, TabletStep } from '../../shared/tablet/tablet-job';
import type { Burnt } from '../../shared/view/protocol';

/** What the page keeps of a run that is at the bench. Times are milliseconds since 1970, so that a wait goes on while it is closed. */
export interface KeptRun {
    /** Name of the file that the run is saved as; drawn once, so that the same run saved twice is one file. */
    file: string;
    /** ISO 8601. */
    date: string;
    note: string;
    steps: Record<string, KeptStep>;
}

export interface KeptStep {
    at?: number;
    ends?: number;
    rung?: boolean;
    burnt?: Burnt;
    /** What was typed, by the number of the figure. */
    figures?: Record<number, string>;
    note?: string;
    photos?: string;
}

/** Another issue or another text of the recipe is another run. */
export function keyOf({ recipe, revision, mark = '' }: TabletJob): string {
    return `kerfbook tablet ${recipe} ${revision} ${mark}`;
}

/** What was kept before, or a new run where there is nothing that can be read. */
export function readKept(text: string | null, begin: () => KeptRun): KeptRun {
    try {
        const kept: unknown = JSON.parse(text ?? '');
        if (isKept(kept)) return kept;
    } catch {
        // Written by something else, or cut short when the battery went.
    }
    return begin();
}

function isKept(kept: unknown): kept is KeptRun {
    return (
        typeof kept === 'object' &&
        kept !== null &&
        ['file', 'date', 'note'].every((key) => typeof (kept as Record<string, unknown>)[key] === 'string') &&
        typeof (kept as KeptRun).steps === 'object' &&
        Object.values((kept as KeptRun).steps ?? {}).every((step) => typeof step === 'object' && step !== null)
    );
}

/** Time left as a clock shows it: `6 d 23:04`, `1:04:09`, `4:09`. @param seconds whole */
export function clockWords(seconds: number): string {
    const two = (part: number): string => String(part).padStart(2, '0');
    const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
    if (hours >= 24) return `${Math.floor(hours / 24)} d ${hours % 24}:${two(minutes)}`;
    return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/** A figure as it is typed with a glove: a comma for a point is as good. Undefined for what is no number. */
export function typedNumber(typed: string): number | undefined {
    const text = typed.trim().replace(',', '.');
    return /^\d{1,6}(\.\d{1,6})?$/.test(text) ? Number(text) : undefined;
}

/** The figures of a step as a run has them: `depth 0.31 mm`. What cannot be read is left out. */
export function measuredWords({ asked }: TabletStep, { figures = {} }: KeptStep): { step: string; words: string }[] {
    return asked.flatMap(({ step, what, unit }, index) => {
        const typed = figures[index] ?? '';
        if (what === 'through') return typed === '' ? [] : [{ step, words: `through ${typed}` }];
        const value = typedNumber(typed);
        return value === undefined ? [] : [{ step, words: `${what} ${value} ${unit}` }];
    });
}
