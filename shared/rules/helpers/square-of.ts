import type { LaserSettings } from '../../plan/laser-plan';
import { showNumber, showRatio } from '../../quantity/show';

/** A square of a coupon that is burnt with given settings, as a maker would say it. */
export function squareOf({ power, powerRatio, speed, passes }: LaserSettings): string {
    const strength = Number.isFinite(powerRatio) ? showRatio(powerRatio) : `${showNumber(power, 1)} W`;
    return `a square with ${strength} at ${showNumber(speed, 1)} mm/s${passes === 1 ? '' : ` in ${showNumber(passes, 0)} passes`}`;
}
