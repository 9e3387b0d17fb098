import { bounds, perimeter } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { rotate } from '../geometry/transform';
import type { Cut, Engrave } from '../recipe/step';
import type { Laser } from '../recipe/stock';
import type { LaserSettings } from './laser-plan';
import type { Memo } from './memo';

export interface Job {
    readonly region: Region;
    readonly regionKey: string;
    readonly step: Engrave | Cut;
    readonly scanAngle: number;
    readonly outlinePasses: number;
    readonly settings: LaserSettings | undefined;
    readonly laser: Laser | undefined;
}

/** Seconds the machine runs for one piece; 0 when the settings are not known. */
export function machineTime(job: Job, memo: Memo): number {
    const { settings, laser } = job;
    if (settings === undefined) return 0;
    const acceleration = laser?.acceleration?.value ?? 3000;
    const lines = job.step.kind === 'engrave' ? scanTime(job, settings, acceleration, memo) * settings.passes : 0;
    const length = memo.get('perimeter', job.regionKey, () => perimeter(job.region));
    return lines + (job.outlinePasses * length) / settings.speed;
}

function scanTime(job: Job, settings: LaserSettings, acceleration: number, memo: Memo): number {
    const box = memo.get('turned-bounds', `${job.regionKey} ${job.scanAngle}`, () => bounds(rotate(job.region, -job.scanAngle)));
    if (box === undefined) return 0;
    const count = Math.ceil((box.maxY - box.minY) / settings.pitch);
    const line = (box.maxX - box.minX) / settings.speed + (2 * settings.speed) / acceleration;
    return count * line + Math.max(0, count - 1) * 2 * Math.sqrt(settings.pitch / acceleration);
}
