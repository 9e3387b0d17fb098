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

/** One part that is cut out along its drawn line and tried in the opening; mm. */
export interface Plug {
    readonly number: number;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
    /** How much larger all round than the opening it is drawn. */
    readonly larger: number;
}

/**
 * Steps of clearance: one opening and plugs that are drawn larger than it all round, each by a step more, all cut along their drawn
 * lines with the same settings. A plug is turned over and pushed in, so that its walls and those of the opening lean the same way.
 */
export interface ClearanceLadder {
    readonly settings: Rung;
    readonly opening: { readonly x: number; readonly y: number; readonly length: number; readonly width: number };
    /** The smallest first. */
    readonly plugs: readonly Plug[];
}

/** How many strips a coupon may have cut out of it; apart from their layout, so that the command line reads no statistics. */
export const stripLimits = { least: 2, most: 12 };

/** How many plugs a clearance ladder may have. */
export const plugLimits = { least: 3, most: 12 };
