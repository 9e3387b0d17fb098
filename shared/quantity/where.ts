/**
 * The place in the text where a value was written. The trade engine carries it along without
 * knowing any text, so that a finding can be shown where the maker can mend it.
 * `offset` and `length` count UTF-16 units of the file at `uri`.
 */
export interface Where {
    readonly uri: string;
    readonly offset: number;
    readonly length: number;
    /** How a figure of the built-in stock is known; absent where one source at least was read for it, and for all that makers write. */
    readonly grade?: Grade;
}

/** Nobody has read a source for it, or the sources that were read disagree and it is the stricter. */
export type Grade = 'not checked' | 'disputed';

/** A value together with the place where it was written. */
export interface Written<T> {
    readonly value: T;
    readonly where: Where;
}

/** For values that come from nowhere in the text, such as defaults. */
export const nowhere: Where = { uri: '', offset: 0, length: 0 };
