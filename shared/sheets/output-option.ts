import { outputOf } from '../burn/output';
import { settingFor, usableSetpoints } from '../burn/power-curve';
import type { Laser } from '../recipe/stock';
import type { Rs274Options } from './rs274';

/** How a machine file says the power: its word, the S for all of it, and how watts become S where power does not go with the setting. */
export function outputOption(laser: Laser): Pick<Rs274Options, 'settingFor' | 'fullScale' | 'followsSpeed'> {
    const { full, followsSpeed } = outputOf(laser);
    return {
        fullScale: full,
        followsSpeed,
        ...(usableSetpoints(laser).length === 0 ? {} : { settingFor: (watts) => settingFor(laser, watts) ?? Number.NaN }),
    };
}
