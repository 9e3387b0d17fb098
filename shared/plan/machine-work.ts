import { leastPowerOf } from '../burn/power-curve';
import type { Bounds } from '../geometry/region';
import { followsOutline } from '../recipe/follows-outline';
import { fileLinesOf, type MachineJob } from '../toolpath/job';
import { reachOfJob } from '../toolpath/reach';
import { timeOfJob } from '../toolpath/time';
import { contentKey } from './content-key';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import { type BlankSize, originOn } from './origin';
import { type Burning, motionOf, toolpaths } from './toolpaths';

/** What a step asks of the machine. */
export type MachineWork = Pick<LaserPlan, 'machine' | 'reach' | 'fileLines'>;

export const noWork: MachineWork = { machine: 0, fileLines: 0 };

/**
 * How long the machine runs for one piece of a step (s, by trapezoidal motion, with the way from the origin and
 * back), what the head moves over meanwhile (mm), and how long its part of the machine file is (lines). Nothing
 * when the settings are not known.
 */
export function machineWork(burnings: readonly Burning[], blank: BlankSize | undefined, memo: Memo): MachineWork {
    const known = burnings.filter(({ settings }) => settings !== undefined);
    if (known.length === 0) return noWork;
    const { laser } = known[0]!;
    const origin = originOn(blank, laser);
    const key = contentKey(
        motionOf(laser),
        laser?.overtravel,
        laser?.focus?.value,
        origin,
        known.map((burning) => workKey(burning, memo)),
    );
    return memo.get('machine-work', key, () => {
        const job: MachineJob = {
            work: known.flatMap((burning) => toolpaths(burning, memo)),
            motion: motionOf(laser),
            origin,
            focusByHand: laser?.focus?.value === 'by-hand',
        };
        const reach: Bounds | undefined = reachOfJob(job);
        return {
            machine: timeOfJob(job)?.total ?? 0,
            ...(reach === undefined ? {} : { reach }),
            fileLines: job.work.reduce((sum, work) => sum + fileLinesOf(work), 0),
        };
    });
}

function workKey(
    { step, region, pictures, settings, scanAngle, outlinePasses, outline, focus, laser }: Burning,
    memo: Memo,
): unknown {
    const bothWays = step.kind === 'engrave' ? [step.scan?.bothWays, followsOutline(step)] : undefined;
    const cut = step.kind === 'cut' ? [step.tabs?.value, step.leadIn?.value] : undefined;
    const dots = (pictures ?? []).map(({ grid }) => memo.keyOf(grid));
    return [
        memo.keyOf(region),
        dots,
        settings,
        scanAngle,
        outlinePasses,
        outline,
        leastPowerOf(laser),
        focus,
        bothWays,
        cut,
        step.kind,
    ];
}
