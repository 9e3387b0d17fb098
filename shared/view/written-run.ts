import * as v from 'valibot';
import type { Message } from '../recipe/phrase';
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

/** The file of its own that a run was written into, or why there is none. */
export type WrittenRunAnswer = { readonly uri: string; readonly text: string } | { readonly problem: Message };
