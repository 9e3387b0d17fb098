import type { LaserSettings } from '../../plan/laser-plan';
import { showNumber, showRatio } from '../../quantity/show';

/** Settings as a maker would say them. */
export function settingsOf({ power, powerRatio, speed, passes }: LaserSettings): string {
    const strength = Number.isFinite(powerRatio) ? showRatio(powerRatio) : `${showNumber(power, 1)} W`;
    return `${strength} at ${showNumber(speed, 1)} mm/s${passes === 1 ? '' : ` in ${showNumber(passes, 0)} passes`}`;
}

/** A square of a coupon that is burnt with given settings. */
export function squareOf(settings: LaserSettings): string {
    return `a square with ${settingsOf(settings)}`;
}
