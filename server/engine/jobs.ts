import type { Finding } from '../../shared/recipe/finding';
import type { Recipe } from '../../shared/recipe/recipe';
import type { Sheets } from '../../shared/sheets/build-sheets';
import type { BenchView, SectionView } from '../../shared/view/bench-view';
import type { Setting } from '../../shared/view/make-bench-view';
import type { Checklist } from '../../shared/view/protocol';

/** What is asked of the plan engine. Plain data, since it passes between threads. */
export type Job =
    | { readonly do: 'examine'; readonly recipe: Recipe }
    | { readonly do: 'bench'; readonly recipe: Recipe; readonly setting: Setting; readonly textFindings: readonly Finding[] }
    | { readonly do: 'checklist'; readonly recipe: Recipe }
    | { readonly do: 'build'; readonly recipe: Recipe; readonly textFindings: readonly Finding[] }
    | { readonly do: 'json'; readonly recipe: Recipe; readonly textFindings: readonly Finding[]; readonly shapes: boolean }
    | { readonly do: 'section'; readonly recipe: Recipe; readonly frame: number; readonly blank: string; readonly y: number };

export interface Answers {
    readonly examine: readonly Finding[];
    readonly bench: BenchView;
    readonly checklist: Checklist;
    readonly build: Sheets;
    readonly json: unknown;
    readonly section: SectionView | null;
}

export type AnswerTo<J extends Job> = Answers[J['do']];

/** An art file as it was read, or why it was not; `version` changes whenever the content may have. */
export interface ArtFile {
    readonly uri: string;
    readonly version: string;
    readonly bytes?: Uint8Array;
    readonly problem?: 'missing' | 'outside' | 'too-large' | 'unreadable';
}

/** Thrown inside a job when nobody waits for its answer any more. */
export class Cancelled extends Error {
    constructor() {
        super('A newer job has taken its place.');
    }
}
