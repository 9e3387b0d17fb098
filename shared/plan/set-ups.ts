import { bounds } from '../geometry/measure';
import type { Bounds } from '../geometry/region';
import { type Side, sideOf } from '../piece/lie';
import type { Laser, Zero } from '../recipe/stock';
import { reachOfAll } from '../toolpath/reach';
import type { LaserPlan } from './laser-plan';
import { lieOf } from './lies';
import { originOn } from './origin';
import type { BlankPlan, Plan } from './plan';

/** A set-up of the machine: steps in a row that burn on one blank, without bench work between them. */
export interface SetUp {
    readonly number: number;
    readonly blank: BlankPlan;
    /** Which face is up; absent for a blank that is never turned over. */
    readonly side?: Side;
    readonly lasers: readonly LaserPlan[];
}

/** "tray", or "the back of tray" where it is turned over at some time. */
export function setUpPlace({ blank, side }: SetUp): string {
    return side === undefined ? blank.name : `the ${side} of ${blank.name}`;
}

/** Bench work between burns means that the piece leaves the machine and is laid in anew. */
export function setUps(plan: Plan): SetUp[] {
    const list: (SetUp & { lasers: LaserPlan[] })[] = [];
    let open: (SetUp & { lasers: LaserPlan[] }) | undefined;
    const flipped = new Set(plan.steps.flatMap(({ step, blank }) => (step.kind === 'flip' ? [blank] : [])));
    for (const { step, laser } of plan.steps) {
        if (step.kind === 'check' || step.kind === 'do') continue;
        if (laser === undefined) {
            open = undefined;
            continue;
        }
        const blank = plan.blanks.find((candidate) => candidate.name === laser.blank);
        if (blank === undefined) continue;
        if (open === undefined || open.blank !== blank) {
            const side = flipped.has(blank.name) ? { side: sideOf(lieOf(laser)) } : {};
            open = { number: list.length + 1, blank, ...side, lasers: [] };
            list.push(open);
        }
        open.lasers.push(laser);
    }
    return list;
}

/**
 * What the head moves over for steps of one set-up (mm on the blank, y downwards): their work with run-ups, and the
 * origin, where it comes from and goes back to. Of a step of which the settings are not known yet the art itself,
 * which is the least. Undefined where nothing is done. @param zero where the origin is, if not where the laser has it
 */
export function reachOfSteps(
    lasers: readonly LaserPlan[],
    { size }: Pick<BlankPlan, 'size'>,
    laser: Laser | undefined,
    zero?: Zero,
): Bounds | undefined {
    const work = reachOfAll(lasers.map(({ reach, region }) => reach ?? bounds(region)));
    return work === undefined || size === undefined ? work : reachOfAll([work], originOn(size, laser, zero));
}
