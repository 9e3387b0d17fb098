import * as v from 'valibot';
import type { Where } from '../quantity/where';
import type { Message } from '../recipe/phrase';
import type { TotalsView } from './bench-view';
import { hideable } from './hideable';
import { newFile } from './new-recipe';
import { address, count, figure, listOf, maybe, whole } from './shapes';

export type { RunParams } from './written-run';

/** What editor and server hand to each other beyond the language server protocol: plain data. requests.ts says what is asked with it. */
const ofRecipe = {
    uri: address,
    /** The recipe's name; the first of the file, or the one at `offset`, when absent. */
    recipe: maybe(v.string()),
    offset: maybe(count),
};

/** Commands that pages made by the server lead to, where the editor has them. */
export const command = {
    /** Takes a Where. */
    goToPlace: 'kerfbook.goToPlace',
    /** Takes a rule's id. */
    explain: 'kerfbook.explainFinding',
} as const;

export const compareParams = v.object({
    uri: address,
    /** What is compared with: a file of the workspace, or a revision; the last commit when neither is given. */
    before: maybe(address),
    revision: maybe(v.string()),
});
export type CompareParams = v.InferOutput<typeof compareParams>;

export const tableParams = v.object({
    ...ofRecipe,
    /** Also what does not differ. */
    all: maybe(v.boolean()),
});
export type TableParams = v.InferOutput<typeof tableParams>;

export const weekParams = v.object({
    uri: address,
    /** The first day, and the hour at which it begins: `2026-12-01T08:00`. */
    start: v.pipe(v.string(), v.maxLength(40)),
    makers: maybe(count),
    /** Days of the week on which nobody works, 0 for Sunday. */
    closed: listOf(count),
});
export type WeekParams = v.InferOutput<typeof weekParams>;

export const seasonParams = v.object({
    uri: address,
    /** The first and the last day, `2026-12-01`; without them all runs. */
    from: maybe(v.pipe(v.string(), v.maxLength(10))),
    to: maybe(v.pipe(v.string(), v.maxLength(10))),
});
export type SeasonParams = v.InferOutput<typeof seasonParams>;

export const historyParams = v.object({
    ...ofRecipe,
    /** Only the present plan: git is not started. */
    present: maybe(v.boolean()),
});
export type HistoryParams = v.InferOutput<typeof historyParams>;

/** What stands in a page: markup that runs nothing and loads nothing, or why there is none. */
export type PageAnswer = (
    | { readonly title: string; readonly body: string /** Whom of the asked file it is about. */; readonly recipe?: string }
    | { readonly problem: Message /** Asking again would be in vain. */; readonly final?: true }
) & {
    /** Why the text cannot be read as a whole at present: half a recipe may seem to be gone then. */
    readonly broken?: string;
};

export type RevisionsAnswer = { readonly revisions: readonly RevisionChoice[] } | { readonly problem: Message };

export type RevisionPlacesAnswer = RevisionPlaces | { readonly problem: Message };

export interface RevisionPlaces {
    readonly places: readonly WatchedPlace[];
    /** Another word once any revision stands elsewhere. */
    readonly now: string;
}

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

export const benchParams = v.object(ofRecipe);
export type BenchParams = v.InferOutput<typeof benchParams>;

export const pictureParams = v.object({
    ...ofRecipe,
    /** Names of pieces and path data that the asker has from earlier answers. */
    had: maybe(listOf(v.string())),
    /** Whether the picture may come before the fixes of its findings have been tried out. */
    soon: maybe(v.boolean()),
});
export type PictureParams = v.InferOutput<typeof pictureParams>;

/** A recipe of a file and where its text stands, in UTF-16 units. */
const placedRecipe = v.object({ name: v.string(), offset: count, length: count });
export type PlacedRecipe = v.InferOutput<typeof placedRecipe>;

export const plannedParams = v.object({ uri: address, textVersion: whole, recipes: listOf(placedRecipe) });
export type PlannedParams = v.InferOutput<typeof plannedParams>;

export const toolpathParams = v.object({
    ...ofRecipe,
    /** Index of the step. */
    step: count,
});
export type ToolpathParams = v.InferOutput<typeof toolpathParams>;

export const sectionParams = v.object({
    ...ofRecipe,
    /** Index into the frames. */
    frame: count,
    blank: v.string(),
    /** mm from the blank's top. */
    y: figure,
});
export type SectionParams = v.InferOutput<typeof sectionParams>;

export const columnParams = v.object({
    ...ofRecipe,
    /** Index into the frames. */
    frame: count,
    blank: v.string(),
    /** mm from the blank's left edge and from its top. */
    x: figure,
    y: figure,
});
export type ColumnParams = v.InferOutput<typeof columnParams>;

export const roundParams = v.object({
    ...ofRecipe,
    /** Index into the frames. */
    frame: count,
    blank: v.string(),
    /** What is left out of it. */
    hidden: maybe(listOf(v.picklist(hideable))),
});

export const pressParams = v.object({
    ...ofRecipe,
    /** Index of the inlay step. */
    step: count,
    /** Token under which progress is told: a number from 0 to 1. */
    progress: maybe(v.union([v.string(), v.number()])),
});
export type PressParams = v.InferOutput<typeof pressParams>;

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
    /** How deep an engraving should be, where no check has asked for it by the end of a run. */
    readonly burntDepth?: Measure;
    /** Of an engraving in several passes, which can be measured after one of them: where its depth is asked for, and how many passes there are. */
    readonly measureAfter?: { readonly where: Where; readonly passes: number; readonly unit: string };
}

/** A step as a line of a run has it: its name and `of walnut-12 80 % at 461 mm/s x 3 pitch 0.1 mm`. */
export interface Burnt {
    readonly step: string;
    readonly words: string;
}

export interface Measure {
    /** The step that is measured. */
    readonly step: string;
    readonly what: 'depth' | 'width' | 'tone' | 'through';
    /** What it should be, as it is shown, and its bounds: mm, of a tone 0 to 1, of what should be through 1. */
    readonly wish: string;
    /** In which a maker would say it: that of the recipe, `%` of a tone, empty for through. */
    readonly unit: string;
    readonly low: number;
    readonly high: number;
}

export interface BuildAnswer {
    readonly files: readonly BuiltFile[];
    /** Why nothing, or not everything, was written. */
    readonly problems: readonly Message[];
}

export interface BuiltFile {
    /** Relative to the output folder, with forward slashes, never leaving it. */
    readonly path: string;
    readonly text: string;
    readonly note: string;
    /** People write into it: once it is there it is never written over. */
    readonly fillIn?: boolean;
}

export const writing = {
    /** Also over what was changed by hand. */
    force: maybe(v.boolean()),
    /** Takes away what an earlier writing left. */
    clean: maybe(v.boolean()),
};
const writingOptions = v.object(writing);
export type WritingOptions = v.InferOutput<typeof writingOptions>;

export const writeRecipeParams = v.object({ uri: address, recipe: v.string(), ...writing });
export type WriteRecipeParams = v.InferOutput<typeof writeRecipeParams>;

export interface WritingAnswer {
    /** Address of the folder. */
    readonly folder: string;
    /** How many files lie there as they were worked out. */
    readonly written: number;
    /** What was not written, kept or left there, a sentence each. */
    readonly problems: readonly Message[];
    /** What else is to be said of them, a sentence each. */
    readonly notes?: readonly Message[];
    /** Whether something could not be worked out or written. */
    readonly incomplete: boolean;
    /** Whether some were changed by hand and kept. */
    readonly kept: boolean;
    /** Whether some are left from an earlier writing and can be taken away. */
    readonly stale: boolean;
}

export const writeNewParams = v.object({
    /** Address of the folder. */
    folder: address,
    files: listOf(newFile),
});
export type WriteNewParams = v.InferOutput<typeof writeNewParams>;

/** A path in a folder: with forward slashes, never leaving it. */
export const pathParams = v.object({ folder: address, path: v.string() });
export type PathParams = v.InferOutput<typeof pathParams>;

export type LookAnswer =
    | { readonly kind: 'missing' | 'folder' | 'link' }
    | { readonly kind: 'file'; readonly base64: string }
    | { readonly problem: string };

export const putParams = v.object({ folder: address, files: listOf(v.object({ path: v.string(), base64: v.string() })) });
export type PutParams = v.InferOutput<typeof putParams>;

export const removeParams = v.object({ folder: address, paths: listOf(v.string()) });
export type RemoveParams = v.InferOutput<typeof removeParams>;

export const insertArtParams = v.object({
    uri: address,
    /** Where the art is dropped. */
    offset: count,
    /** Addresses of the art files; they need not be there yet. */
    files: listOf(address),
});
export type InsertArtParams = v.InferOutput<typeof insertArtParams>;

export const checkParams = v.object({
    /** Address of the folder, from which files are named. */
    folder: address,
    /** Recipe files below it, for a server that cannot look for them by itself. */
    files: maybe(listOf(address)),
    /** Whether warnings count as failing. */
    strict: maybe(v.boolean()),
});
export type CheckParams = v.InferOutput<typeof checkParams>;

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

/** Edits of one file as the server knows it, or why there are none. */
export type WrittenAnswer =
    | { readonly uri: string; readonly version: number; readonly edits: readonly TextChange[] }
    | { readonly problem: Message };

/** `offset` and `length` are a number's, a size's or a place's, or those of a whole `art` line that is to get a place. */
export const rewriteParams = v.object({
    uri: address,
    textVersion: whole,
    offset: count,
    length: count,
    /** As it is to be written, such as `0.6 mm`. */
    text: v.string(),
});
export type RewriteParams = v.InferOutput<typeof rewriteParams>;

/** A replacement of a span of a file's text, in UTF-16 units. */
export interface TextChange {
    readonly offset: number;
    readonly length: number;
    readonly text: string;
}

export interface ListAnswer {
    /** Empty for a folder that is not there or outside of the workspace. Links are left out: they could lead in a circle. */
    readonly entries: readonly { readonly name: string; readonly kind: 'file' | 'folder' }[];
}

export type ReadAnswer = { readonly base64: string } | { readonly problem: 'missing' | 'outside' | 'too-large' | 'unreadable' };
