import type { Quantity } from '../quantity/quantity';
import type { Where, Written } from '../quantity/where';
import type { Allow } from './allow';
import type { MeasuredPocket, Run } from './run';
import type { Shop } from './shop';
import type { Step } from './step';
import type { Coupon, Extent, Laser, Named, Sheet } from './stock';

/**
 * One product's recipe as plain data, with every name resolved to what it stands for. What could
 * not be read or resolved is absent; the text's own findings have said so already.
 */
export interface Recipe extends Named {
    readonly title: string;
    readonly base?: Base;
    /** The whole recipe block. */
    readonly whole: Where;
    readonly revision: number;
    readonly make: number;
    /** Where it, or what it is based on, cannot be read: there may be more to it. Absent where all can. */
    readonly incomplete?: readonly Where[];
    readonly laser?: Laser;
    readonly arts: readonly ArtSource[];
    readonly blanks: readonly Blank[];
    readonly steps: readonly Step[];
    readonly allows: readonly Allow[];
    /** Coupons that fit this recipe's laser and any of its blanks. */
    readonly coupons: readonly Coupon[];
    /** How it went so far, from the first day to the last, wherever it is written. */
    readonly runs: readonly Run[];
    /** What runs of all recipes in sight measured on this recipe's laser, in any of its boards and veneers. */
    readonly measured: readonly MeasuredPocket[];
    /** The shop that makes it: the nearest in sight. */
    readonly shop?: Shop;
    /** The day on which it is made, ISO 8601, where one is stated; else it is that of the newest run. */
    readonly today?: string;
}

/** What a variant is based on. Its own values stand in its own block, all others in one of `wholes`. */
export interface Base {
    /** The name of the recipe right below it. */
    readonly name: string;
    /** The place of that name in the variant's head. */
    readonly where: Where;
    /** The blocks of all recipes it stands on, nearest first. */
    readonly wholes: readonly Where[];
}

export interface ArtSource extends Named {
    /** As written: a path relative to the recipe's file. */
    readonly path: Written<string>;
    /** Resolved against the recipe's file. */
    readonly uri: string;
    readonly width?: Quantity;
    readonly height?: Quantity;
    /** Darkness from which paint burns, 0 to 1; half when not written. */
    readonly threshold?: Quantity;
    /** The whole statement of the threshold. */
    readonly thresholdWhere?: Where;
    /** How the greys of a picture become dots; without it what is darker than the threshold burns whole. */
    readonly dither?: Written<Dithering>;
    /** Darkness in the picture to share burnt, in the order written. */
    readonly curve?: Written<readonly { readonly from: number; readonly to: number }[]>;
    readonly whole: Where;
}

export type Dithering = 'floyd-steinberg' | 'jarvis-judice-ninke' | 'ordered';

export type Touch = 'food' | 'hands' | 'nobody';

export type Backing = 'foil' | 'tape' | 'none';

export interface Blank extends Named {
    readonly sheet?: Sheet;
    readonly size?: Extent;
    /** The side along which the grain runs. */
    readonly grain?: 'width' | 'height';
    /** The whole statement of it. */
    readonly grainWhere?: Where;
    readonly backing: Backing;
    /** What touches its face when it is in use. */
    readonly touchedBy?: Written<Touch>;
    /** Where the piece is kept in use; indoors where nothing is said. */
    readonly kept?: Written<'indoors' | 'outdoors'>;
    readonly whole: Where;
}
