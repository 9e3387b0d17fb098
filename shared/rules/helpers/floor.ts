import type { Interval } from '../../quantity/interval';
import type { Engrave } from '../../recipe/step';
import { depthUnit, roundLength } from './ask-depth';

/** Least wood under a pocket, mm. @commonPractice */
export const leastFloor = 1;

/**
 * The deepest that leaves a floor at the bad end of both tolerances, mm, on a round figure: a depth is taken to miss by the
 * same part of itself as the one that is asked for now. Undefined where nothing worth engraving is left.
 * @param least what is to be left, mm
 */
export function deepestWithFloor(step: Engrave, depth: Interval, thickness: Interval, least = leastFloor): number | undefined {
    const over = depth.value > 0 ? Math.max(1, depth.high / depth.value) : 1;
    const most = roundLength((thickness.low - least) / over, depthUnit(step), 'down');
    return most >= 0.1 ? most : undefined;
}
