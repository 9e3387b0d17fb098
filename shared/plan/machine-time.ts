import { timeOfJob } from '../toolpath/time';
import { contentKey } from './content-key';
import type { Memo } from './memo';
import { type Burning, motionOf, toolpaths } from './toolpaths';

/** Seconds the machine runs for one piece of a step, by trapezoidal motion; 0 when the settings are not known. */
export function machineTime(burning: Burning, memo: Memo): number {
    const { step, settings, laser } = burning;
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
    );
    return memo.get(
        'machine-time',
        key,
        () => timeOfJob({ work: toolpaths(burning, memo), motion: motionOf(laser) })?.total ?? 0,
    );
}
