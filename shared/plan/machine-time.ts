import { timeOfJob } from '../toolpath/time';
import { contentKey } from './content-key';
import type { Memo } from './memo';
import { type Burning, homeOf, motionOf, toolpaths } from './toolpaths';

/**
 * Seconds the machine runs for one piece of a step, by trapezoidal motion, with the way from home and back;
 * 0 when the settings are not known. `height` is the blank's (mm).
 */
export function machineTime(burnings: readonly Burning[], height: number, memo: Memo): number {
    const home = homeOf(height);
    const known = burnings.filter(({ settings }) => settings !== undefined);
    if (known.length === 0) return 0;
    const { laser } = known[0]!;
    const key = contentKey(
        motionOf(laser),
        laser?.overtravel,
        laser?.focus?.value,
        home,
        known.map((burning) => workKey(burning, memo)),
    );
    return memo.get(
        'machine-time',
        key,
        () =>
            timeOfJob({
                work: known.flatMap((burning) => toolpaths(burning, memo)),
                motion: motionOf(laser),
                home,
                focusByHand: laser?.focus?.value === 'by-hand',
            })?.total ?? 0,
    );
}

function workKey({ step, region, pictures, settings, scanAngle, outlinePasses, focus }: Burning, memo: Memo): unknown {
    const bothWays = step.kind === 'engrave' ? step.scan?.bothWays : undefined;
    const cut = step.kind === 'cut' ? [step.tabs?.value, step.leadIn?.value] : undefined;
    const dots = (pictures ?? []).map(({ grid }) => memo.keyOf(grid));
    return [memo.keyOf(region), dots, settings, scanAngle, outlinePasses, focus, bothWays, cut, step.kind];
}
