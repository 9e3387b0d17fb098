import type { Move } from './rs274-reader';

/**
 * Runs moves on a machine that is stepped along its path in small lengths: at each step the squared speed may
 * grow or shrink by 2·a·ds. Nothing here is shared with the product's way of working the time out.
 */
export interface Machine {
    readonly topSpeed: number;
    readonly acceleration: number;
    /** How far (mm) the head may cut a corner. */
    readonly cornerTolerance: number;
    /** Speed (mm/s) and acceleration (mm/s2) of the focus, and what a stop of the program takes (s). */
    readonly focus?: { readonly speed: number; readonly acceleration: number; readonly stop: number };
}

/** Seconds from the first move to the last. Rapid moves start and end at rest. `each` is told what every move takes. */
export function simulate(
    moves: readonly Move[],
    machine: Machine,
    step = 0.01,
    each: (move: Move, seconds: number) => void = () => {},
): number {
    let time = 0;
    let z = 0;
    for (let i = 0; i < moves.length; ) {
        let end = i + 1;
        if (moves[i]!.z !== z || moves[i]!.stops > 0) {
            if (machine.focus === undefined) throw new Error('a focus that moves wants a machine that can');
            time += moves[i]!.stops * machine.focus.stop + straight(Math.abs(moves[i]!.z - z), machine.focus);
            z = moves[i]!.z;
        }
        if (!moves[i]!.rapid) while (end < moves.length && !moves[end]!.rapid) end++;
        time += runChain(moves.slice(i, end), machine, step, each);
        i = end;
    }
    return time;
}

/** From rest to rest: to half way the speed grows, then it falls, unless it is reached before. */
function straight(length: number, { speed, acceleration }: NonNullable<Machine['focus']>): number {
    const ramp = Math.min(speed / acceleration, Math.sqrt(length / acceleration));
    return 2 * ramp + Math.max(0, length - acceleration * ramp * ramp) / speed;
}

function runChain(moves: readonly Move[], machine: Machine, step: number, each: (move: Move, seconds: number) => void): number {
    const limits: number[] = [0];
    const lengths: number[] = [];
    const owners: Move[] = [];
    moves.forEach((move, i) => {
        const length = Math.hypot(move.x1 - move.x0, move.y1 - move.y0);
        const speed = move.rapid ? machine.topSpeed : move.feed / 60;
        const steps = Math.max(1, Math.ceil(length / step));
        if (i > 0) limits[limits.length - 1] = Math.min(speed, cornerLimit(moves[i - 1]!, move, machine));
        for (let k = 0; k < steps; k++) {
            lengths.push(length / steps);
            owners.push(move);
            limits.push(speed);
        }
    });
    limits[limits.length - 1] = 0;
    const twice = 2 * machine.acceleration;
    for (let k = limits.length - 2; k >= 0; k--)
        limits[k] = Math.min(limits[k]!, Math.sqrt(limits[k + 1]! ** 2 + twice * lengths[k]!));
    let time = 0;
    for (let k = 0; k < lengths.length; k++) {
        limits[k + 1] = Math.min(limits[k + 1]!, Math.sqrt(limits[k]! ** 2 + twice * lengths[k]!));
        const taken = lengths[k]! > 0 ? (2 * lengths[k]!) / (limits[k]! + limits[k + 1]!) : 0;
        each(owners[k]!, taken);
        time += taken;
    }
    return time;
}

/** The speed whose centripetal acceleration on the arc that rounds the corner off is the machine's. */
function cornerLimit(before: Move, after: Move, { acceleration, cornerTolerance }: Machine): number {
    const a = Math.atan2(before.y1 - before.y0, before.x1 - before.x0);
    const b = Math.atan2(after.y1 - after.y0, after.x1 - after.x0);
    const turn = Math.abs(Math.atan2(Math.sin(b - a), Math.cos(b - a)));
    if (turn < 1e-9) return Number.POSITIVE_INFINITY;
    // The corner lies r/cos(turn/2) from the arc's middle, so it is missed by r·(1/cos(turn/2) − 1).
    const radius = cornerTolerance / (1 / Math.cos(turn / 2) - 1);
    return Math.sqrt(acceleration * radius);
}
