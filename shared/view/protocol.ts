import type { Where } from '../quantity/where';
import type { BenchView, TotalsView } from './bench-view';

/**
 * What editor and server say to each other beyond the language server protocol. Names of methods
 * and plain data only, so that both ends and other editors can share it.
 */
export const method = {
    /** Request: the bench view of a recipe; BenchParams to BenchView or null. */
    bench: 'kerfbook/bench',
    /** Notification from the server: a file has been planned anew; PlannedParams. */
    planned: 'kerfbook/planned',
    /** Request: the steps to tick; BenchParams to Checklist or null. */
    checklist: 'kerfbook/checklist',
    /** Request: the files for machine and bench; BenchParams to BuildAnswer. */
    build: 'kerfbook/build',
    /** Request: a section across a blank at another place; SectionParams to SectionView or null. */
    section: 'kerfbook/section',
    /** Request: the text of a built-in stock file; { uri } to string or null. */
    stock: 'kerfbook/stock',
    /** Request: a rule's explanation as Markdown; { rule } to string or null. */
    page: 'kerfbook/page',
    /** Request from the server: bytes of a file as base64, or why not; ReadParams to ReadAnswer. */
    read: 'kerfbook/read',
} as const;

export interface BenchParams {
    readonly uri: string;
    /** The recipe's name; the first of the file, or the one at `offset`, when absent. */
    readonly recipe?: string;
    readonly offset?: number;
}

export interface PlannedParams {
    readonly uri: string;
    readonly textVersion: number;
    readonly recipes: readonly string[];
}

export interface SectionParams extends BenchParams {
    /** Index into the frames. */
    readonly frame: number;
    readonly blank: string;
    readonly y: number;
}

export interface Checklist {
    readonly recipe: string;
    readonly title: string;
    readonly revision: number;
    readonly totals: TotalsView;
    readonly cautions: readonly string[];
    readonly items: readonly ChecklistItem[];
}

export interface ChecklistItem {
    /** Stays the same while the step keeps its kind and name, so that ticks survive edits around it. */
    readonly id: string;
    readonly label: string;
    /** Settings and times, short. */
    readonly detail: string;
    readonly tooltip: string;
    readonly where: Where;
    /** Seconds to wait once it is ticked. */
    readonly wait?: number;
    /** What to measure, when the step is a check. */
    readonly measure?: string;
}

export interface BuildAnswer {
    readonly files: readonly BuiltFile[];
    /** Why nothing, or not everything, was written. */
    readonly problems: readonly string[];
}

export interface BuiltFile {
    /** Relative to the output folder, with forward slashes, never leaving it. */
    readonly path: string;
    readonly text: string;
    readonly note: string;
}

export interface ReadParams {
    readonly uri: string;
}

export type ReadAnswer = { readonly base64: string } | { readonly problem: 'missing' | 'outside' | 'too-large' | 'unreadable' };

export type { BenchView };
