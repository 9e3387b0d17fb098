import type { Where } from '../quantity/where';
import type { TotalsView } from './bench-view';
import type { NewFile } from './new-recipe';

/**
 * What editor and server say to each other beyond the language server protocol. Names of methods
 * and plain data only, so that both ends and other editors can share it.
 */
export const method = {
    /** Request: the bench view of a recipe; PictureParams to SentPicture or null. */
    bench: 'kerfbook/bench',
    /** Notification from the server: a file has been planned anew; PlannedParams. */
    planned: 'kerfbook/planned',
    /** Request: the steps to tick; BenchParams to Checklist or null. */
    checklist: 'kerfbook/checklist',
    /** Request: the files for machine and bench; BenchParams to BuildAnswer. */
    build: 'kerfbook/build',
    /** Request: what a coupon can be made of; CouponChoicesParams to CouponChoices or null. */
    couponChoices: 'kerfbook/couponChoices',
    /** Request: the files of a coupon; CouponParams to CouponAnswer or null. */
    coupon: 'kerfbook/coupon',
    /** Request: the squares of a coupon that wait to be measured; SquaresParams to SquaresAnswer or null. */
    squares: 'kerfbook/squares',
    /** Request: whether what was typed is a depth; { text } to DepthReading. */
    readDepth: 'kerfbook/readDepth',
    /** Request: the edits that write measured squares down; MeasuredParams to WrittenAnswer or null. */
    measured: 'kerfbook/measured',
    /** Request: the edit that writes a finished run below its recipe; RunParams to WrittenAnswer or null. */
    run: 'kerfbook/run',
    /** Request: what a new recipe can be made of; NewRecipeChoicesParams to NewRecipeChoices. */
    newRecipeChoices: 'kerfbook/newRecipeChoices',
    /** Request: the files of a new recipe, tried out; NewRecipeParams to NewRecipeAnswer. */
    newRecipe: 'kerfbook/newRecipe',
    /** Request: the edits that bring art files into a recipe; InsertArtParams to WrittenAnswer or null. */
    insertArt: 'kerfbook/insertArt',
    /** Request: what is said of all recipe files in a folder; CheckParams to CheckAnswer. */
    check: 'kerfbook/check',
    /** Request: a section across a blank at another place; SectionParams to SectionView or null. */
    section: 'kerfbook/section',
    /** Request: the head's way through a laser step; ToolpathParams to ToolpathView or null. */
    toolpath: 'kerfbook/toolpath',
    /** Request: the edits that put a typed number in the place of a written one; RewriteParams to WrittenAnswer or null. */
    rewrite: 'kerfbook/rewrite',
    /** Request: both halves of an inlay pressed together; PressParams to PressView or null. Tells how far it is as progress. */
    press: 'kerfbook/press',
    /** Request: a file beside an earlier version of it, or beside another file; CompareParams to PageAnswer, null when given up. */
    compare: 'kerfbook/compare',
    /** Request: revisions to compare a file with; { uri } to RevisionsAnswer. */
    revisions: 'kerfbook/revisions',
    /** Request: where it shows that revisions of a file stand elsewhere than before; { uri } to RevisionPlacesAnswer. */
    revisionPlaces: 'kerfbook/revisionPlaces',
    /** Request: a recipe and all that is based on it, side by side; TableParams to PageAnswer, null when given up. */
    table: 'kerfbook/table',
    /** Request: what became of a recipe's runs; HistoryParams to PageAnswer, null when given up. */
    history: 'kerfbook/history',
    /** Request: the text of a built-in stock file; { uri } to string or null. */
    stock: 'kerfbook/stock',
    /** Request: a rule's explanation as Markdown; { rule } to string or null. */
    page: 'kerfbook/page',
    /** Request: writes the files for machine and bench; WriteRecipeParams to WritingAnswer or null. */
    writeRecipe: 'kerfbook/writeRecipe',
    /** Request: writes the files of a coupon; WriteCouponParams to WritingAnswer or null. */
    writeCoupon: 'kerfbook/writeCoupon',
    /** Request: writes files that are not there yet, all or none; WriteNewParams to why not, or null. */
    writeNew: 'kerfbook/writeNew',
    /** Request: whether a folder may be written to; { folder } to why not, or null. */
    mayHold: 'kerfbook/mayHold',
    /** Request from the server: bytes of a file as base64, or why not; ReadParams to ReadAnswer. */
    read: 'kerfbook/read',
    /** Request from the server: what lies in a folder; ListParams to ListAnswer. */
    list: 'kerfbook/list',
    /** Request from the server that has no disk: what lies at a path; PathParams to LookAnswer. */
    look: 'kerfbook/look',
    /** Request from the server that has no disk: puts all files there or none; PutParams to why not, or null. */
    put: 'kerfbook/put',
    /** Request from the server that has no disk: takes files away; RemoveParams to why not, or null. */
    remove: 'kerfbook/remove',
} as const;

/** Commands that pages made by the server lead to, where the editor has them. */
export const command = {
    /** Takes a Where. */
    goToPlace: 'kerfbook.goToPlace',
    /** Takes a rule's id. */
    explain: 'kerfbook.explainFinding',
} as const;

export interface CompareParams {
    readonly uri: string;
    /** What is compared with: a file of the workspace, or a revision; the last commit when neither is given. */
    readonly before?: string;
    readonly revision?: string;
}

export interface TableParams extends BenchParams {
    /** Also what does not differ. */
    readonly all?: boolean;
}

export interface HistoryParams extends BenchParams {
    /** Only the present plan: git is not started. */
    readonly present?: boolean;
}

/** What stands in a page: markup that runs nothing and loads nothing, or why there is none. */
export type PageAnswer = (
    | { readonly title: string; readonly body: string /** Whom of the asked file it is about. */; readonly recipe?: string }
    | { readonly problem: string /** Asking again would be in vain. */; readonly final?: true }
) & {
    /** Why the text cannot be read as a whole at present: half a recipe may seem to be gone then. */
    readonly broken?: string;
};

export type RevisionsAnswer = { readonly revisions: readonly RevisionChoice[] } | { readonly problem: string };

export type RevisionPlacesAnswer = { readonly places: readonly WatchedPlace[] } | { readonly problem: string };

/** Files that tell by a change of theirs that something else has changed. */
export interface WatchedPlace {
    /** Address of a folder; it may lie outside of the workspace. */
    readonly folder: string;
    /** As the editor matches names below it. */
    readonly pattern: string;
}

export interface RevisionChoice {
    /** As git takes it. */
    readonly revision: string;
    readonly kind: 'commit' | 'branch' | 'tag';
    readonly name: string;
    /** ISO 8601. */
    readonly day: string;
    /** First line of the commit's message. */
    readonly subject: string;
}

export interface BenchParams {
    readonly uri: string;
    /** The recipe's name; the first of the file, or the one at `offset`, when absent. */
    readonly recipe?: string;
    readonly offset?: number;
}

export interface PictureParams extends BenchParams {
    /** Names of pieces and path data that the asker has from earlier answers. */
    readonly had?: readonly string[];
}

export interface PlannedParams {
    readonly uri: string;
    readonly textVersion: number;
    readonly recipes: readonly string[];
}

export interface ToolpathParams extends BenchParams {
    /** Index of the step. */
    readonly step: number;
}

export interface SectionParams extends BenchParams {
    /** Index into the frames. */
    readonly frame: number;
    readonly blank: string;
    readonly y: number;
}

export interface PressParams extends BenchParams {
    /** Index of the inlay step. */
    readonly step: number;
    /** Token under which progress is told: a number from 0 to 1. */
    readonly progress?: string;
}

export interface Checklist {
    readonly recipe: string;
    readonly title: string;
    readonly revision: number;
    readonly laser?: string;
    /** Absent where `unknown` says why they are not known. */
    readonly totals?: TotalsView;
    readonly unknown?: string;
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
    /** What the step is burnt in and with. */
    readonly burnt?: Burnt;
    /** What to measure, when the step is a check. */
    readonly measures?: readonly Measure[];
}

/** A step as a line of a run has it: its name and `of walnut-12 80 % at 461 mm/s x 3 pitch 0.1 mm`. */
export interface Burnt {
    readonly step: string;
    readonly words: string;
}

export interface Measure {
    /** The step that is measured. */
    readonly step: string;
    readonly what: 'depth' | 'width';
    /** What it should be, as it is shown, and its bounds in mm. */
    readonly wish: string;
    readonly low: number;
    readonly high: number;
}

export interface RunParams {
    readonly uri: string;
    readonly recipe: string;
    /** ISO 8601: `2026-11-20`. */
    readonly date: string;
    readonly revision: number;
    readonly laser?: string;
    /** What was burnt and measured, each as it is written in a run. */
    readonly lines: readonly string[];
    readonly notes: readonly string[];
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
    /** People write into it: once it is there it is never written over. */
    readonly fillIn?: boolean;
}

export interface WriteRecipeParams extends WritingOptions {
    readonly uri: string;
    readonly recipe: string;
}

export interface WriteCouponParams extends CouponParams, WritingOptions {}

export interface WritingOptions {
    /** Also over what was changed by hand. */
    readonly force?: boolean;
    /** Takes away what an earlier writing left. */
    readonly clean?: boolean;
}

export interface WritingAnswer {
    /** Address of the folder. */
    readonly folder: string;
    /** How many files lie there as they were worked out. */
    readonly written: number;
    /** What was not written, kept or left there, a sentence each. */
    readonly problems: readonly string[];
    /** Whether something could not be worked out or written. */
    readonly incomplete: boolean;
    /** Whether some were changed by hand and kept. */
    readonly kept: boolean;
    /** Whether some are left from an earlier writing and can be taken away. */
    readonly stale: boolean;
}

export interface WriteNewParams {
    /** Address of the folder. */
    readonly folder: string;
    readonly files: readonly NewFile[];
}

/** A path in a folder: with forward slashes, never leaving it. */
export interface PathParams {
    readonly folder: string;
    readonly path: string;
}

export type LookAnswer =
    | { readonly kind: 'missing' | 'folder' | 'link' }
    | { readonly kind: 'file'; readonly base64: string }
    | { readonly problem: string };

export interface PutParams {
    readonly folder: string;
    readonly files: readonly { readonly path: string; readonly base64: string }[];
}

export interface RemoveParams {
    readonly folder: string;
    readonly paths: readonly string[];
}

export interface InsertArtParams {
    readonly uri: string;
    /** Where the art is dropped. */
    readonly offset: number;
    /** Addresses of the art files; they need not be there yet. */
    readonly files: readonly string[];
}

export interface CheckParams {
    /** Address of the folder, from which files are named. */
    readonly folder: string;
    /** Recipe files below it, for a server that cannot look for them by itself. */
    readonly files?: readonly string[];
    /** Whether warnings count as failing. */
    readonly strict?: boolean;
}

export interface CheckAnswer {
    /** As `kerfbook check` says it: `file:line:column: severity: message [rule]`, one a line, then the sum. */
    readonly report: string;
    readonly failed: boolean;
    readonly files: readonly CheckedFile[];
}

export interface CheckedFile {
    readonly uri: string;
    /** From the folder, with forward slashes. */
    readonly path: string;
    readonly recipes: readonly string[];
    readonly errors: number;
}

export interface CouponChoicesParams {
    readonly uri: string;
    /** Where the cursor is. */
    readonly offset?: number;
}

export interface CouponChoices {
    readonly sheets: readonly string[];
    readonly lasers: readonly string[];
    /** The coupons that are there, and how many rows each has. */
    readonly coupons: readonly { readonly sheet: string; readonly laser: string; readonly rows: number }[];
    /** The coupon under the cursor. */
    readonly here?: { readonly sheet: string; readonly laser: string };
}

export interface CouponParams {
    readonly uri: string;
    readonly sheet: string;
    readonly laser: string;
}

export interface CouponAnswer extends BuildAnswer {
    /** Name of the folder, below `made` beside the file, in which the files belong. */
    readonly folder: string;
}

export interface SquaresParams extends CouponParams {
    /** The recipe text that was written with the coupon's files, where it is not to be read from their folder. */
    readonly made?: string;
}

/** A square that waits to be measured. */
export interface OpenSquare {
    /** As it is written in a recipe: `burn 40 % at 400 mm/s`. */
    readonly words: string;
    /** The number burnt beside it, where that is known. */
    readonly number?: number;
}

export type SquaresAnswer = { readonly squares: readonly OpenSquare[] } | { readonly problem: string };

/** `depth` as it is to be written, `value` in mm where it is a length. */
export type DepthReading = { readonly depth: string; readonly value?: number } | { readonly problem: string };

export interface MeasuredParams extends SquaresParams {
    readonly rows: readonly { readonly words: string; readonly depth: string }[];
}

/** Edits of one file as the server knows it, or why there are none. */
export type WrittenAnswer =
    | { readonly uri: string; readonly version: number; readonly edits: readonly TextChange[] }
    | { readonly problem: string };

/** `offset` and `length` are a number's, a size's or a place's, or those of a whole `art` line that is to get a place. */
export interface RewriteParams {
    readonly uri: string;
    readonly textVersion: number;
    readonly offset: number;
    readonly length: number;
    /** As it is to be written, such as `0.6 mm`. */
    readonly text: string;
}

/** A replacement of a span of a file's text, in UTF-16 units. */
export interface TextChange {
    readonly offset: number;
    readonly length: number;
    readonly text: string;
}

export interface ListParams {
    readonly uri: string;
}

export interface ListAnswer {
    /** Empty for a folder that is not there or outside of the workspace. Links are left out: they could lead in a circle. */
    readonly entries: readonly { readonly name: string; readonly kind: 'file' | 'folder' }[];
}

export interface ReadParams {
    readonly uri: string;
}

export type ReadAnswer = { readonly base64: string } | { readonly problem: 'missing' | 'outside' | 'too-large' | 'unreadable' };
