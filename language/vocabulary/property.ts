import type { Dimension } from '../../shared/quantity/dimension';
import type { KerfAstType } from '../generated/ast';

/** What a figure may be: its dimension, and in base units the usual range and the bounds beyond which it means nothing. */
export interface Measure {
    readonly dimension: Dimension;
    /** Outside it a number is asked about, not refused. */
    readonly usual?: readonly [low: number, high: number];
    readonly bounds: readonly [low: number, high: number];
}

/**
 * How a property is written after its words: `figure` a number with unit, `count` a bare number, `size` and `place` two
 * lengths, `word` one of `choices`, `name` a name declared elsewhere; `phrase` has a shape of its own in the grammar.
 */
export type Takes = 'figure' | 'count' | 'size' | 'place' | 'word' | 'flag' | 'text' | 'colour' | 'day' | 'name' | 'phrase';

/** A kind of node in the syntax tree. */
export type NodeType = keyof KerfAstType;

/** Words run together, as the syntax tree holds them: `least power` is `leastpower`. */
export type KeyOfWords<Words extends string> = Words extends `${infer First} ${infer Rest}`
    ? `${First}${KeyOfWords<Rest>}`
    : Words;

/** One line that can stand in a block, and all that the tool knows of it. */
export interface Property<
    Block extends NodeType = NodeType,
    Key extends string = string,
    How extends Takes = Takes,
    Choice extends string = string,
> {
    /** The kind of block it stands in: the type in the syntax tree. */
    readonly block: Block;
    readonly key: Key;
    readonly words: string;
    readonly takes: How;
    readonly measures: readonly Measure[];
    readonly choices: readonly Choice[];
    /** One sentence for hover and completion. */
    readonly what: string;
    readonly example: string;
    /** What holds where it is not written: a value as it would be written, or in a maker's words; `needed` where nothing does. */
    readonly otherwise: string;
    /** Shown as a hint where it is not written: something that is done all the same. */
    readonly hinted?: true;
    /** May stand more than once in a block. */
    readonly many: boolean;
    /** The node that the line becomes, where that does not bear the key itself. */
    readonly node?: NodeType;
    /** How its word was spelled in an earlier edition; still read. */
    readonly before?: string;
    /** What comes right behind its words, in a maker's words: `the name of a wood`. */
    readonly follows?: string;
}

interface Details<Choice extends string> {
    readonly measures?: readonly Measure[];
    readonly choices?: readonly Choice[];
    readonly many?: boolean;
    readonly node?: NodeType;
    readonly follows?: string;
    readonly before?: string;
    readonly otherwise: string;
    readonly hinted?: true;
}

/** A line of a block. */
export function property<
    const Block extends NodeType,
    const Words extends string,
    const How extends Takes,
    const Choice extends string = never,
>(
    block: Block,
    words: Words,
    takes: How,
    what: string,
    example: string,
    details: Details<Choice>,
): Property<Block, KeyOfWords<Words>, How, Choice> {
    const key = words.replaceAll(' ', '') as KeyOfWords<Words>;
    return { block, key, words, takes, what, example, measures: [], choices: [], many: false, ...details };
}

/** A number inside a line: `key` is where the syntax tree holds it, `after` the word behind which it stands. */
export function part(
    block: NodeType,
    key: string,
    after: string,
    what: string,
    example: string,
    measures: readonly Measure[],
    { takes = 'figure', otherwise = 'needed' }: { readonly takes?: Takes; readonly otherwise?: string } = {},
): Property {
    return { block, key, words: after, takes, what, example, measures, otherwise, choices: [], many: false };
}

/** Blocks and lines whose figures are wishes of which nothing could keep a range: one figure each. */
const plainBlocks: ReadonlySet<string> = new Set([
    'Engrave',
    'Cut',
    'Art',
    'Fill',
    'Inlay',
    'Circle',
    'Rectangle',
    'Grown',
    'ArtUse',
    'Shape',
    'Scan',
    'Repeat',
    'CurvePoint',
    'Do',
    'Found',
    'SheetPrice',
    'FluidPrice',
    'ShopPrice',
    'OnHand',
    'Offcut',
]);
const plainParts: ReadonlySet<string> = new Set([
    'Burn.power',
    'Burn.speed',
    'CutTest.power',
    'CutTest.speed',
    'Coupon.pitch',
    'Burnt.power',
    'Burnt.speed',
    'Burnt.pitch',
]);

/** Whether a range or a tolerance has a meaning there: what was measured, a promised depth, a wait, what is checked or sanded off. */
export function takesRange({ block, key }: Property): boolean {
    return !plainBlocks.has(block) && !plainParts.has(`${block}.${key}`);
}

const enormous = 1e9;

/** A measure that has to be more than nothing. */
export function positive(dimension: Dimension, usual?: readonly [number, number]): Measure {
    return { dimension, ...(usual && { usual }), bounds: [Number.MIN_VALUE, enormous] };
}

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
