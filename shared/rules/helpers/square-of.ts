import type { LaserSettings } from '../../plan/laser-plan';
import { showNumber, showRatio } from '../../quantity/show';

/** With what something is burnt; a setting that is not known leaves its power in W. */
type Named = Pick<LaserSettings, 'power' | 'speed' | 'passes'> & { readonly powerRatio?: number };

/** Settings as a maker would say them. */
export function settingsOf({ power, powerRatio, speed, passes }: Named): string {
    const strength =
        powerRatio !== undefined && Number.isFinite(powerRatio) ? showRatio(powerRatio) : `${showNumber(power, 1)} W`;
    return `${strength} at ${showNumber(speed, 1)} mm/s${passes === 1 ? '' : ` in ${showNumber(passes, 0)} passes`}`;
}

/** A square of a coupon that is burnt with given settings. */
export function squareOf(settings: Named): string {
    return `a square with ${settingsOf(settings)}`;
}
