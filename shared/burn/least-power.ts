import type { Laser } from '../recipe/stock';

/** The least power (W) that a laser can hold; it may be written as a part of its own. Undefined where that is not known. */
export function leastPowerOf(laser: Laser | undefined): number | undefined {
    const written = laser?.leastPower;
    if (written === undefined || written.dimension !== 'ratio') return written?.value;
    return laser?.power === undefined ? undefined : written.value * laser.power.value;
}
