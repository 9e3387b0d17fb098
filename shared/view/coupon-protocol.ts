import * as v from 'valibot';
import { plugLimits, stripLimits } from '../burn/kerf-strip';
import type { Message } from '../recipe/phrase';
import { type BuildAnswer, writing } from './protocol';
import { address, count, listOf, maybe } from './shapes';

/** What editor and server hand to each other about coupons: plain data. requests.ts says what is asked with it. */

export const couponChoicesParams = v.object({
    uri: address,
    /** Where the cursor is. */
    offset: maybe(count),
});
export type CouponChoicesParams = v.InferOutput<typeof couponChoicesParams>;

export interface CouponChoices {
    readonly sheets: readonly string[];
    readonly lasers: readonly string[];
    /** The coupons that are there, and how many rows each has. */
    readonly coupons: readonly { readonly sheet: string; readonly laser: string; readonly rows: number }[];
    /** The coupon under the cursor. */
    readonly here?: { readonly sheet: string; readonly laser: string };
}

const ofCoupon = { uri: address, sheet: v.string(), laser: v.string() };
export const writeCouponParams = v.object({
    ...ofCoupon,
    ...writing,
    /** How many strips to cut out stand beside the squares; none where it is left out. */
    cuts: maybe(v.pipe(count, v.minValue(stripLimits.least), v.maxValue(stripLimits.most))),
    /** How many plugs of a clearance ladder, likewise. */
    fits: maybe(v.pipe(count, v.minValue(plugLimits.least), v.maxValue(plugLimits.most))),
    /** Squares for what recipes ask for, instead of the ladder. */
    next: maybe(v.boolean()),
});
export type WriteCouponParams = v.InferOutput<typeof writeCouponParams>;
export const couponParams = v.object(ofCoupon);
export type CouponParams = v.InferOutput<typeof couponParams>;

export interface CouponAnswer extends BuildAnswer {
    /** Name of the folder, below `made` beside the file, in which the files belong. */
    readonly folder: string;
}

const ofSquares = {
    ...ofCoupon,
    /** What stands in the recipe text that was written with the coupon's files, if it is there. */
    made: maybe(v.string()),
};
export const squaresParams = v.object(ofSquares);
export type SquaresParams = v.InferOutput<typeof squaresParams>;

/** A square that waits to be measured. */
export interface OpenSquare {
    /** As it is written in a recipe: `burn 40 % at 400 mm/s`. */
    readonly words: string;
    /** The number burnt beside it, where that is known. */
    readonly number?: number;
}

export type SquaresAnswer = { readonly squares: readonly OpenSquare[] } | { readonly problem: Message };

/** `depth` as it is to be written, `value` in mm where it is a length, `tone` 0 to 1 where it is one. */
export type DepthReading =
    | { readonly depth: string; readonly value?: number; readonly tone?: number }
    | { readonly problem: Message };

export const measuredParams = v.object({ ...ofSquares, rows: listOf(v.object({ words: v.string(), depth: v.string() })) });
export type MeasuredParams = v.InferOutput<typeof measuredParams>;
