import type { Where } from '../quantity/where';
import type { MeasuredBurn } from '../recipe/run';
import type { Burn, Coupon, Laser } from '../recipe/stock';
import { spotOf } from './beam';
import { pitchForSpot } from './pitch';
import { wattsOf } from './power-curve';

/** One measured square in base units, whether from a coupon or from a run. */
export interface BurnRow extends MeasuredBurn {
    readonly where?: Where;
}

/** The coupon's rows that hold usable figures; power in per cent is a setting of the laser's own. */
export function rowsOf(coupon: Coupon | undefined, laser: Laser | undefined): { rows: BurnRow[]; leftOut: Burn[] } {
    const rows: BurnRow[] = [];
    const leftOut: Burn[] = [];
    const pitch = coupon?.pitch?.value ?? pitchForSpot(spotOf(laser));
    for (const burn of coupon?.burns ?? []) {
        const power = wattsOf(burn.power, laser) ?? Number.NaN;
        const row: BurnRow = {
            power,
            speed: burn.speed.value,
            pitch: pitch ?? Number.NaN,
            passes: burn.passes,
            depth: burn.depth.value,
            tolerance: burn.depth.tolerance,
            where: burn.where,
        };
        if (usable(row)) rows.push(row);
        else leftOut.push(burn);
    }
    return { rows, leftOut };
}

// Far outside of any workshop, so that squares of them cannot overflow.
const within = (value: number, low: number, high: number): boolean => value >= low && value <= high;

export function usable(row: BurnRow): boolean {
    return (
        within(row.power, 1e-3, 1e5) &&
        within(row.speed, 1e-3, 1e6) &&
        within(row.pitch, 1e-4, 1e3) &&
        within(row.passes, 1, 1000) &&
        within(row.depth, 0, 1e3) &&
        within(row.tolerance, 0, 1e3)
    );
}
