import type { Hatch } from './hatch';
import { type Motion, runUp } from './motion';
import type { Path } from './path';
import type { BlankPoint } from './place';

interface Burnt {
    /** What the machine file and the time list call it. */
    readonly name: string;
    /** W */
    readonly power: number;
    /** mm/s */
    readonly speed: number;
    readonly passes: number;
    /** Height of the focus below the face (mm) for each pass; the face if absent. */
    readonly focus?: readonly number[];
    /** Air assist. */
    readonly air?: boolean;
}

/** An area pass along scan lines. */
export interface AreaWork extends Burnt {
    readonly kind: 'area';
    readonly hatch: Hatch;
    readonly bothWays: boolean;
    /** Run-up before and after each stretch (mm); what the speed needs if absent. */
    readonly overtravel?: number;
}

/** Paths that are followed one after another: outline passes and cuts. */
export interface PathWork extends Burnt {
    readonly kind: 'path';
    readonly paths: readonly Path[];
}

export type Work = AreaWork | PathWork;

/** What one set-up of the machine does, in order. Places in mm on the blank, y downwards. */
export interface MachineJob {
    readonly work: readonly Work[];
    readonly motion: Motion;
    /** Where the machine file has X 0 Y 0, and the head comes from and goes back to; the top left corner if absent. */
    readonly origin?: BlankPoint;
    /** The machine stops for a person to change the focus, instead of moving it itself. */
    readonly focusByHand?: boolean;
}

/** Whether all speeds, powers and counts are such as a machine could have. */
export function isRunnable({ work, motion }: MachineJob): boolean {
    const within = (value: number, low: number, high: number): boolean => value >= low && value <= high;
    return (
        within(motion.topSpeed, 1e-6, 1e6) &&
        within(motion.acceleration, 1e-6, 1e9) &&
        work.every(
            ({ speed, power, passes, focus = [] }) =>
                within(speed, 1e-6, 1e6) &&
                within(power, 0, 1e6) &&
                within(passes, 0, 1e4) &&
                focus.every((height) => within(height, 0, 1e3)),
        )
    );
}

/** Run-up of an area pass (mm). */
export function overtravelOf(work: AreaWork, motion: Motion): number {
    const overtravel = work.overtravel ?? runUp(work.speed, motion.acceleration);
    return overtravel >= 0 && Number.isFinite(overtravel) ? overtravel : 0;
}

/** Lines beyond which no machine file is made: about 60 MB. */
export const MAX_FILE_LINES = 3_000_000;

/**
 * Lines of a machine file for all passes of a work, to within a few for each pass. Of an area of which not all
 * scan lines were made it is an estimate, and more than MAX_FILE_LINES.
 */
export function fileLinesOf(work: Work): number {
    if (work.kind === 'path') return work.passes * work.paths.reduce((sum, path) => sum + path.points.length / 2, 0);
    const { every, segments, lines } = work.hatch;
    const made = work.passes * 2 * (segments + lines) * every;
    return every === 1 ? made : Math.max(made, MAX_FILE_LINES + 1);
}
