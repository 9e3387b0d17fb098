import type { Coupon } from '../../shared/recipe/stock';
import { burn, couponOf } from '../burn/stock';

/*
 * The bench of simulated squares: a coupon on the laser `shed` of 45 W, measured with a gauge. What places differ by and what a gauge
 * misreads is assumed. @commonPractice
 */

/** Standard deviations: place to place on a board, as a part of the depth, and reading (mm). */
export const scatter = { place: 0.03, reading: 0.01 } as const;
export const pitch = 0.1;
/** Power as a part of the laser's, speed in mm/s, passes. */
export const ladder: readonly (readonly [ratio: number, speed: number, passes: number])[] = [
    [0.4, 400, 1],
    [0.5, 400, 1],
    [0.6, 300, 1],
    [0.7, 300, 1],
    [0.8, 250, 1],
    [0.9, 250, 1],
    [0.8, 300, 2],
    [0.8, 250, 2],
    [0.7, 300, 3],
    [0.6, 300, 4],
];

/** Reads a depth (mm) in one place: to steps of the gauge where it has any, and never below `least`. */
export function readDepth(
    depth: number,
    roll: () => number,
    { place, reading, gauge = 0, least }: { place: number; reading: number; gauge?: number; least: number },
): number {
    const read = depth * (1 + place * roll()) + reading * roll();
    return Math.max(least, gauge === 0 ? read : Math.round(read / gauge) * gauge);
}

/** @param measured depth (mm) that is read of a square burnt with so many J/mm2 a pass */
export function simulatedCoupon(measured: (dose: number, passes: number) => number, squares = ladder): Coupon {
    return couponOf(
        squares.map(([ratio, speed, passes]) => burn(ratio, speed, passes, measured((45 * ratio) / (speed * pitch), passes))),
        pitch,
    );
}
