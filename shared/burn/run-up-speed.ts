import type { Laser } from '../recipe/stock';
import { outputOf } from './output';

/**
 * The speed (mm/s) that the head reaches over the laser's overtravel, √(2·a·s), down to whole mm/s: beyond it
 * the edges of an area are burnt while it still speeds up. Undefined where overtravel or acceleration is not
 * written, for an overtravel of nothing, over which no speed at all is reached, and where the power goes down with the speed.
 */
export function runUpSpeed(laser: Laser | undefined): number | undefined {
    if (outputOf(laser).followsSpeed) return undefined;
    const over = laser?.overtravel?.value;
    const acceleration = laser?.acceleration?.value;
    if (over === undefined || acceleration === undefined || !(over > 0 && acceleration > 0)) return undefined;
    const speed = Math.sqrt(2 * acceleration * over);
    return Number.isFinite(speed) ? Math.max(1, Math.floor(speed)) : undefined;
}
