import { timeOfJob } from '../toolpath/time';
import { contentKey } from './content-key';
import type { Memo } from './memo';
import { type Burning, homeOf, motionOf, toolpaths } from './toolpaths';

/**
 * Seconds the machine runs for one piece of a step, by trapezoidal motion, with the way from home and back;
 * 0 when the settings are not known. `height` is the blank's (mm).
 */
export function machineTime(burning: Burning, height: number, memo: Memo): number {
    const { step, settings, laser } = burning;
    const home = homeOf(height);
    if (settings === undefined) return 0;
    const written = step.kind === 'engrave' ? step.scan : undefined;
    const key = contentKey(
        memo.keyOf(burning.region),
        settings,
        motionOf(laser),
        laser?.overtravel,
        burning.scanAngle,
        burning.outlinePasses,
        written?.bothWays,
        step.kind === 'cut' ? step.tabs?.value : undefined,
        step.kind,
        home,
    );
    return memo.get(
        'machine-time',
        key,
        () => timeOfJob({ work: toolpaths(burning, memo), motion: motionOf(laser), home })?.total ?? 0,
    );
}
