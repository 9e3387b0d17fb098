import type { MachineJob } from './job';
import { type Motion, moveTime } from './motion';

/** How a driven focus moves: slowly, since it lifts a table or a heavy head. @commonPractice */
export const FOCUS_MOTION: Motion = { topSpeed: 5, acceleration: 100 };
/** A person lowers the focus, checks it and starts the machine again (s). @commonPractice */
export const FOCUS_BY_HAND = 60;

/** Heights of the focus below the face (mm) that a job goes through one after another, the face first. */
export function focusHeightsOf({ work }: Pick<MachineJob, 'work'>): number[] {
    const heights = [0];
    for (const { focus, passes } of work) {
        for (let pass = 0; pass < (focus === undefined ? Math.min(passes, 1) : passes); pass++) {
            const height = focus?.[pass] ?? 0;
            if (height !== heights.at(-1)) heights.push(height);
        }
    }
    return heights;
}

/**
 * Time (s) that a job takes for bringing the focus to its heights, and a driven one back to the face when all is
 * done. By hand that is done after the machine has ended.
 */
export function focusTime(job: MachineJob): number {
    const heights = focusHeightsOf(job);
    if (job.focusByHand === true) return FOCUS_BY_HAND * (heights.length - 1);
    let time = 0;
    heights.forEach((height, i) => {
        const way = Math.abs((heights[i + 1] ?? 0) - height);
        time += moveTime(way, FOCUS_MOTION.topSpeed, FOCUS_MOTION.acceleration);
    });
    return time;
}
