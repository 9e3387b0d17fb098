import type { Dimension } from '../../shared/quantity/dimension';

/** What a figure may be: its dimension, and in base units the usual range and the bounds beyond which it means nothing. */
export interface Measure {
    readonly dimension: Dimension;
    /** Outside it a number is asked about, not refused. */
    readonly usual?: readonly [low: number, high: number];
    readonly bounds: readonly [low: number, high: number];
}

/**
 * How a property is written after its words: `figure` a number with unit, `count` a bare number,
 * `size` and `place` two lengths, `word` one of `choices`, `name` a name declared elsewhere.
 */
export type Takes = 'figure' | 'count' | 'size' | 'place' | 'word' | 'text' | 'colour' | 'name' | 'phrase';

/** One line that can stand in a block, and all that the tool knows of it. */
export interface Property {
    /** The kind of block it stands in: the type in the syntax tree. */
    readonly block: string;
    /** The words run together, as the syntax tree holds them. */
    readonly key: string;
    readonly words: string;
    readonly takes: Takes;
    readonly measures: readonly Measure[];
    readonly choices: readonly string[];
    /** One sentence for hover and completion. */
    readonly what: string;
    readonly example: string;
    /** May stand more than once in a block. */
    readonly many: boolean;
}

type Details = Partial<Pick<Property, 'measures' | 'choices' | 'many'>>;

export function property(
    block: string,
    words: string,
    takes: Takes,
    what: string,
    example: string,
    details: Details = {},
): Property {
    const key = words.replaceAll(' ', '');
    return { block, key, words, takes, what, example, measures: [], choices: [], many: false, ...details };
}

/** A number inside a line: `key` is where the syntax tree holds it, `after` the word behind which it stands. */
export function part(
    block: string,
    key: string,
    after: string,
    what: string,
    example: string,
    measures: readonly Measure[],
    takes: Takes = 'figure',
): Property {
    return { ...property(block, after, takes, what, example, { measures }), key };
}

const enormous = 1e9;

/** A measure that cannot be negative. */
export function measure(dimension: Dimension, usual?: readonly [number, number], bounds?: readonly [number, number]): Measure {
    return { dimension, ...(usual && { usual }), bounds: bounds ?? [0, enormous] };
}

/** A measure that may point either way, such as an offset. */
export function signed(dimension: Dimension, usual?: readonly [number, number]): Measure {
    return { dimension, ...(usual && { usual }), bounds: [-enormous, enormous] };
}

/** A share of a whole: 0 to 100 %. */
export function share(usual?: readonly [number, number]): Measure {
    return { dimension: 'ratio', ...(usual && { usual }), bounds: [0, 1] };
}
