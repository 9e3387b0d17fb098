import type { Quantity } from '../quantity/quantity';
import type { Laser, Setpoint as SetpointWritten } from '../recipe/stock';

/** A place on the curve: a setting as a part of the whole, and the power (W) at the wood. */
type Setpoint = readonly [part: number, watts: number];

/** The setpoints, upwards, that lie above the one before and below full power; the others say nothing that could be. */
export function usableSetpoints(laser: Laser | undefined): readonly SetpointWritten[] {
    const full = laser?.power?.value ?? Number.NaN;
    const used: SetpointWritten[] = [];
    for (const point of (laser?.setpoints ?? []).toSorted((a, b) => a.setting.value - b.setting.value)) {
        const last = used.at(-1);
        const { setting, gives } = point;
        const rises = setting.value > (last?.setting.value ?? 0) && gives.value > (last?.gives.value ?? 0);
        if (rises && setting.value < 1 && gives.value < full) used.push(point);
    }
    return used;
}

/**
 * The curve from nothing to full power through the setpoints that are written, straight between them; without any,
 * power goes with the setting. Undefined where the full power is not known.
 */
function curveOf(laser: Laser | undefined): readonly Setpoint[] | undefined {
    const full = laser?.power?.value;
    if (full === undefined || !(full > 0 && full <= 1e6)) return undefined;
    return [[0, 0], ...usableSetpoints(laser).map(({ setting, gives }): Setpoint => [setting.value, gives.value]), [1, full]];
}

/** Power (W) at a setting, a part of the whole; beyond the whole the curve goes on as straight as it ends. */
export function wattsAt(laser: Laser | undefined, setting: number): number | undefined {
    const curve = curveOf(laser);
    return curve && along(curve, setting, 0, 1);
}

/** The setting, a part of the whole, that gives a power (W): the way back of wattsAt. */
export function settingFor(laser: Laser | undefined, watts: number): number | undefined {
    const curve = curveOf(laser);
    return curve && along(curve, watts, 1, 0);
}

/** A written power in W; per cent are a setting of the laser's own. */
export function wattsOf(power: Quantity | undefined, laser: Laser | undefined): number | undefined {
    if (power === undefined || power.dimension !== 'ratio') return power?.value;
    return wattsAt(laser, power.value);
}

/** The least power (W) that a laser can hold. Undefined where that is not known. */
export function leastPowerOf(laser: Laser | undefined): number | undefined {
    return wattsOf(laser?.leastPower, laser);
}

function along(curve: readonly Setpoint[], value: number, from: 0 | 1, to: 0 | 1): number {
    let i = 1;
    while (i < curve.length - 1 && curve[i]![from] < value) i++;
    const [a, b] = [curve[i - 1]!, curve[i]!];
    return a[to] + ((value - a[from]) * (b[to] - a[to])) / (b[from] - a[from]);
}
