import * as v from 'valibot';
import type { Message } from '../recipe/phrase';
import { isRunFileName } from './run-file-name';
import { address, count, listOf, maybe } from './shapes';

/** A finished run, as the checklist has it written. */
export const runParams = v.object({
    uri: address,
    recipe: v.string(),
    /** ISO 8601: `2026-11-20`. */
    date: v.string(),
    revision: count,
    laser: maybe(v.string()),
    /** What was burnt and measured, each as it is written in a run. */
    lines: listOf(v.string()),
    notes: listOf(v.string()),
});
export type RunParams = v.InferOutput<typeof runParams>;

/** Characters; a run of the longest recipe has a few thousand. */
const longestRun = 200_000;

/** A run that was written elsewhere, on the page for a tablet. */
export const takeRunParams = v.object({
    uri: address,
    recipe: v.string(),
    /** Of its file, without a folder. */
    name: v.pipe(v.string(), v.check(isRunFileName)),
    text: v.pipe(v.string(), v.maxLength(longestRun)),
});
export type TakeRunParams = v.InferOutput<typeof takeRunParams>;

/** `known` where it was there already. */
export type TakenRunAnswer =
    | { readonly uri: string; readonly text: string; readonly known?: true }
    | { readonly problem: Message };

/** The file of its own that a run was written into, or why there is none. */
export type WrittenRunAnswer = { readonly uri: string; readonly text: string } | { readonly problem: Message };
