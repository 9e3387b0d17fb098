import { benchTimes } from './bench-times';

/** How many cups to mix for a number of pieces. */
export interface Batches {
    readonly count: number;
    /** Pieces out of one cup. */
    readonly pieces: number;
    /** Even one piece takes longer than the resin stays fluid. */
    readonly tooSlow: boolean;
}

/**
 * Cups of resin that can be used up before they stiffen: the pot life starts with mixing, and each
 * piece takes its time to fill.
 *
 * @param pieces to fill
 * @param potLife s
 * @param most pieces that one cup may serve before there is so much in it that its pot life no longer holds
 * @param mixing stirring in hardener and pigment, s
 * @param each filling one piece, s
 */
export function batchesFor(
    pieces: number,
    potLife: number,
    most = Number.POSITIVE_INFINITY,
    mixing: number = benchTimes.mixAndFill.setUp,
    each: number = benchTimes.mixAndFill.each,
): Batches {
    if (!(pieces >= 1)) return { count: 0, pieces: 0, tooSlow: false };
    const fits = Math.floor((potLife - mixing) / each + 1e-9);
    const cup = Math.min(Math.max(1, Math.min(Number.isFinite(fits) ? fits : pieces, Math.floor(most + 1e-9))), pieces);
    return { count: Math.ceil(pieces / cup), pieces: cup, tooSlow: !(fits >= 1) };
}

/**
 * Least amount that can be measured out closely enough: a part read off to half a graduation must
 * not be off by more than `error`.
 *
 * @param parts of the mix, such as 2 and 1
 * @param graduation of cup, syringe or scales, in any unit
 * @param error of the ratio that the resin still forgives (2 to 5 % is said to leave it soft; seen, not a primary source)
 * @returns the whole mix, in the unit of the graduation
 */
export function leastMix(parts: readonly number[], graduation: number, error = 0.03): number {
    const sum = parts.reduce((total, part) => total + part, 0);
    const smallest = Math.min(...parts.filter((part) => part > 0));
    return Number.isFinite(smallest) ? (graduation / 2 / error) * (sum / smallest) : 0;
}
