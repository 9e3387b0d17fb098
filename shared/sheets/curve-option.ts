import { settingFor, usableSetpoints } from '../burn/power-curve';
import type { Laser } from '../recipe/stock';
import type { Rs274Options } from './rs274';

/** How a machine file turns watts into S, for a laser whose power does not go with its setting. */
export function curveOption(laser: Laser): Pick<Rs274Options, 'settingFor'> {
    return usableSetpoints(laser).length === 0 ? {} : { settingFor: (watts) => settingFor(laser, watts) ?? Number.NaN };
}
