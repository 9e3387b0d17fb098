import type { Severity } from '../recipe/finding';
import type { Change } from './change';
import type { PinnedNote } from './pinned';
import type { Shift } from './shifts';

/** Version of the JSON's shape: goes up when a reader would have to change. */
export const reviewSchema = 1;

/** What one version of a recipe has that another has not, and what follows from it. Plain data; numbers in base units. */
export interface Review {
    readonly schema: typeof reviewSchema;
    readonly before: Side;
    readonly after: Side;
    /** Nothing that was written differs, and nothing that follows. */
    readonly same: boolean;
    /** Of the recipe as a whole: title, revision, how many, on which laser. */
    readonly recipe: readonly Change[];
    /** Blanks, art and stock that differ. */
    readonly things: readonly ThingReview[];
    /** Every step of either version, in the order of the later one; a removed step where it stood. */
    readonly steps: readonly StepReview[];
    readonly art: readonly ArtReview[];
    /** For one piece. */
    readonly times: readonly Change[];
    /** For all pieces that the recipe makes. */
    readonly run: readonly Change[];
    readonly supplies: readonly Change[];
    /** For all of them, and the price of one. */
    readonly cost: readonly Change[];
    /** Runs that were written down, taken out or changed. */
    readonly runs: readonly ThingReview[];
    readonly findings: readonly FindingReview[];
    /** How many findings are the same in both; of a brief review only of those that could differ. */
    readonly findingsKept: number;
    /** Every exception that either version makes. */
    readonly allows: readonly AllowReview[];
    /** Titles of the laser steps whose settings no coupon stands behind. */
    readonly guesses: { readonly before: readonly string[]; readonly after: readonly string[] };
    /** Pinned settings beside what would be solved for them. */
    readonly pinned: { readonly before: readonly PinnedNote[]; readonly after: readonly PinnedNote[] };
    readonly cautions: { readonly gained: readonly string[]; readonly lost: readonly string[] };
}

export interface Side {
    /** Where this version comes from: a file, a revision. */
    readonly from: string;
    /** Absent when this side has no such recipe. */
    readonly recipe?: string;
    readonly title: string;
    readonly revision: number;
}

export type Status = 'added' | 'removed' | 'changed' | 'same';

export interface ThingReview {
    /** Such as "board walnut-12", "blank tray" or "run 2026-11-20". */
    readonly thing: string;
    readonly status: Exclude<Status, 'same'>;
    readonly changes: readonly Change[];
    /** What is noticed of a coupon that was not before; absent where that is nothing. */
    readonly findings?: readonly Pick<FindingReview, 'severity' | 'message' | 'rule'>[];
}

export interface StepReview {
    readonly status: Status;
    readonly title: string;
    /** What it was called, when that was something else. */
    readonly titleBefore?: string;
    /** Place among the steps of each version, counted from 0. */
    readonly before?: number;
    readonly after?: number;
    readonly moved: boolean;
    /** What is written differently. */
    readonly settings: readonly Change[];
    /** What follows from that, or from something that was changed elsewhere. */
    readonly follows: readonly Change[];
    /** What it lays elsewhere on its blank; absent where that is nothing. */
    readonly shifts?: readonly Shift[];
}

export interface ArtReview {
    readonly name: string;
    readonly status: Exclude<Status, 'same'>;
    /** The file, the state it is in, the size of its page. */
    readonly changes: readonly Change[];
    /** Areas in mm2: what burns in the later version only, in the earlier only, in both. */
    readonly gained: number;
    readonly lost: number;
    readonly kept: number;
    /** Named parts of the drawing (`#id`) that only one version has, the outermost; absent where there are none. */
    readonly parts?: { readonly gained: readonly string[]; readonly lost: readonly string[] };
}

export interface FindingReview {
    readonly change: 'gained' | 'lost' | 'changed';
    readonly rule: string;
    readonly severity: Severity;
    readonly message: string;
    /** What it said before, when it says something else now. */
    readonly before?: { readonly severity: Severity; readonly message: string };
    /** Index into `steps` of the review. */
    readonly step?: number;
}

export interface AllowReview {
    readonly status: Status;
    readonly rule: string;
    readonly reason: string;
    readonly reasonBefore?: string;
    /** Title of the step it stands in; absent for the whole recipe. */
    readonly step?: string;
}
