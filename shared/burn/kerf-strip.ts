import type { Rung } from './coupon-rungs';

/**
 * One strip that is cut out along its drawn line, so that it comes out narrower by the kerf; numbered on from the squares. Mm.
 * A calliper over it measures half of the kerf on either side, which is easier to come by than the width of a slot.
 */
export interface KerfStrip extends Rung {
    readonly number: number;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    /** Its width as it is drawn. */
    readonly drawn: number;
}

/** How many strips a coupon may have cut out of it; apart from their layout, so that the command line reads no statistics. */
export const stripLimits = { least: 2, most: 12 };
