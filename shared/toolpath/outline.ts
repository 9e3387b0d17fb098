import type { Region } from '../geometry/region';
import { orderRings } from './order';
import type { Path } from './path';
import type { BlankPoint } from './place';

/** The outlines of a region as closed paths, inside before outside, in a short order. */
export function outlinePaths(region: Region, from?: BlankPoint): Path[] {
    return orderRings(region, from);
}
