import type { Finding, Severity } from '../../../shared/recipe/finding';
import type { ReviewNotes } from '../../../shared/review/notes';
import type { PlacedFinding, PlacedSilenced } from '../../report/placed-finding';

/** What a check has found, before it is put into a format. */
export interface CheckReport {
    /** Every file that was looked at, as paths from here. */
    readonly files: readonly string[];
    readonly findings: readonly PlacedFinding[];
    /** What would be said, were it not allowed. */
    readonly silenced: readonly PlacedSilenced[];
    /** What a reviewer should see besides, recipe by recipe. */
    readonly notes: readonly (ReviewNotes & { readonly file: string })[];
    /** Which findings fail the check. */
    readonly failing: Failing;
    /** Top folder of the sources: the repository's, or the one that the command runs in. */
    readonly root: string;
}

export function counts(findings: readonly PlacedFinding[]): Record<Severity, number> {
    const sum: Record<Severity, number> = { error: 0, warning: 0, info: 0, hint: 0 };
    for (const { finding } of findings) sum[finding.severity] += 1;
    return sum;
}

/** Which findings fail a check: severities and rules that do, and rules that do not whatever their severity. */
export interface Failing {
    readonly on: ReadonlySet<string>;
    readonly allowed: ReadonlySet<string>;
}

export const failingOnErrors: Failing = { on: new Set(['error']), allowed: new Set() };
export const failingOnWarnings: Failing = { on: new Set(['error', 'warning']), allowed: new Set() };

/** Whether a finding, or what follows from it, makes the check fail. */
export function fails({ related, ...finding }: Finding, { on, allowed }: Failing): boolean {
    return [finding, ...related].some(
        ({ severity, rule }) =>
            rule !== undefined && !allowed.has(rule) && (on.has(rule) || (severity !== undefined && on.has(severity))),
    );
}

/** "2 errors, 1 warning, 3 notes". */
export function tally(findings: readonly PlacedFinding[]): string {
    const { error, warning, info, hint } = counts(findings);
    const quiet = info + hint;
    return `${plural(error, 'error')}, ${plural(warning, 'warning')}${quiet > 0 ? `, ${plural(quiet, 'note')}` : ''}`;
}

/** Exceptions and guesses of a report in a few words; empty where there are none. */
export function taken({ notes }: CheckReport): string {
    const allows = notes.reduce((sum, note) => sum + note.allows.length, 0);
    const guesses = notes.reduce((sum, note) => sum + note.guesses.length, 0);
    return [
        ...(allows > 0 ? [`${plural(allows, 'exception')} allowed`] : []),
        ...(guesses > 0 ? [`${plural(guesses, 'setting')} guessed without a square or a cut that was tried`] : []),
    ].join(', ');
}

export function plural(count: number, word: string): string {
    return `${count} ${word}${count === 1 ? '' : 's'}`;
}
