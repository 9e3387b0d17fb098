import type { Interval } from '../quantity/interval';
import type { MeasuredPocket } from '../recipe/run';
import { coverageFactor } from './distributions';
import { doseOf } from './dose';
import type { DepthLaw } from './law';
import { DEEP, wallInset, wallOf } from './wall';

/** How much a wall leans below `DEEP` beyond what the beam's width makes of it. */
export interface DeepLean {
    /** Tangent against the upright; 95 % of the next walls lie in it. */
    readonly lean: Interval;
    /** Walls whose width was measured at the face and at the floor; without any the lean is a usual one. */
    readonly walls: number;
}

/** What such walls usually add, as a tangent: nothing to 6 degrees (own estimate). @commonPractice */
const USUAL: Interval = { value: 0.05, low: 0, high: 0.105 };
/** How much that lean differs from wall to wall, one standard deviation, and for how many measured ones it counts. @commonPractice */
const SPREAD = 0.015;
const WEIGHT = 4;
/** A wall tells of the lean below `DEEP` from this depth on, mm: nearer to it the reading is larger than what is read. */
const TELLS = 2;

/**
 * The lean below `DEEP` from the walls that runs measured on this board: what is wider than the law's own wall, by the depth
 * below `DEEP`; the mean of all, with the spread between them and the reading error (own derivation).
 *
 * @param law the board's law, by which a wall is as wide as the beam makes it
 * @param sigma standard deviation of the beam's profile, mm
 */
export function deepLean(pockets: readonly MeasuredPocket[], law: DepthLaw, sigma: number): DeepLean {
    const leans = pockets.flatMap((pocket) => leanOf(pocket, law, sigma) ?? []);
    const walls = leans.length;
    if (walls === 0) return { lean: USUAL, walls };
    const value = leans.reduce((sum, { lean }) => sum + lean, 0) / walls;
    const squares = leans.reduce((sum, { lean }) => sum + (lean - value) ** 2, 0);
    const reading = leans.reduce((sum, { error }) => sum + error ** 2, 0) / walls;
    const freedom = WEIGHT + walls - 1;
    const variance = (WEIGHT * (SPREAD ** 2 + reading) + squares) / freedom;
    const half = coverageFactor(0.95, freedom) * Math.sqrt(Math.max(0, variance - reading) + variance / walls);
    return { lean: { value, low: value - half, high: value + half }, walls };
}

function leanOf(pocket: MeasuredPocket, law: DepthLaw, sigma: number): { lean: number; error: number } | undefined {
    const { wall, depth, passes } = pocket;
    if (wall === undefined || !(depth >= TELLS)) return undefined;
    const dose = doseOf(pocket);
    const profile = wallOf(law, dose, sigma, passes)?.profile;
    if (profile === undefined) return undefined;
    const below = depth - DEEP;
    return { lean: (wall.width - wallInset({ ...profile, depth }, depth)) / below, error: wall.reading / below };
}
