import { isCount, isRecord } from '../read-place';

/** A page that somebody asked for, as plain data: the editor keeps it over a restart. */
export type AskedPage =
    /** A recipe file beside its last commit, or beside another revision or file. */
    | { readonly kind: 'compare'; readonly uri: string; readonly revision?: string; readonly before?: string }
    /** The recipe of that name, or the one at a place, beside its base and all that is based on either; or how its runs went. */
    | { readonly kind: 'variants' | 'history'; readonly uri: string; readonly recipe?: string; readonly offset?: number }
    /** All that is to be made, from a moment on (`2026-12-01T08:00`); the recipe file says which workshop. */
    | { readonly kind: 'week'; readonly uri: string; readonly start: string }
    /** What came of the runs from a day to another; of all where no day is given. */
    | { readonly kind: 'season'; readonly uri: string; readonly from?: string; readonly to?: string };

/** Two questions with the same key have one panel: a file has one page of variants and one of runs, whichever recipe they are about. */
export function keyOf(asked: AskedPage): string {
    return JSON.stringify(
        asked.kind === 'compare'
            ? [asked.kind, asked.uri, asked.revision ?? null, asked.before ?? null]
            : [asked.kind, asked.uri],
    );
}

/** The same question of files that lie elsewhere now. */
export function askedAt(asked: AskedPage, movedTo: (uri: string) => string): AskedPage {
    const uri = movedTo(asked.uri);
    return asked.kind === 'compare' && asked.before !== undefined
        ? { ...asked, uri, before: movedTo(asked.before) }
        : { ...asked, uri };
}

/** Comparing with an earlier version starts git; with another file it does not. */
export function startsGit(asked: AskedPage): boolean {
    return asked.kind === 'compare' && asked.before === undefined;
}

/** What was kept, or undefined where it is none of ours. */
export function readAskedPage(value: unknown): AskedPage | undefined {
    if (!isRecord(value) || !isWords(value.uri)) return undefined;
    const { kind, uri, revision, before, recipe, offset, start, from, to } = value;
    if (kind === 'week') return isWords(start) ? { kind, uri, start } : undefined;
    if (kind === 'season') return { kind, uri, ...(isWords(from) ? { from } : {}), ...(isWords(to) ? { to } : {}) };
    if (kind === 'compare')
        return { kind, uri, ...(isWords(revision) ? { revision } : {}), ...(isWords(before) ? { before } : {}) };
    if (kind !== 'variants' && kind !== 'history') return undefined;
    return { kind, uri, ...(isWords(recipe) ? { recipe } : {}), ...(isCount(offset) ? { offset } : {}) };
}

function isWords(value: unknown): value is string {
    return typeof value === 'string' && value !== '' && value.length <= 4096;
}
