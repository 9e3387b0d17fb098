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

/** Seconds from the first move to the last. Rapid moves start and end at rest. `each` is told what every move takes, in their order. */
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
        time += runChain(moves, i, end, machine, step, each);
        i = end;
    }
    return time;
}

/** From rest to rest: to half way the speed grows, then it falls, unless it is reached before. */
function straight(length: number, { speed, acceleration }: NonNullable<Machine['focus']>): number {
    const ramp = Math.min(speed / acceleration, Math.sqrt(length / acceleration));
    return 2 * ramp + Math.max(0, length - acceleration * ramp * ramp) / speed;
}

/**
 * What the head may do at each place between two steps, as squared speeds: those grow and shrink evenly along the way. Files have
 * millions of steps, so one piece of memory serves all chains.
 */
let limits = new Float64Array(1 << 16);

/** Moves `first` to `end`, without that one, from rest to rest. */
function runChain(
    moves: readonly Move[],
    first: number,
    end: number,
    machine: Machine,
    step: number,
    each: (move: Move, seconds: number) => void,
): number {
    const lengthOf = (move: Move): number => Math.hypot(move.x1 - move.x0, move.y1 - move.y0);
    const stepsOf = (length: number): number => Math.max(1, Math.ceil(length / step));
    let count = 0;
    for (let i = first; i < end; i++) count += stepsOf(lengthOf(moves[i]!));
    if (limits.length <= count) limits = new Float64Array(2 * count);
    let at = 0;
    for (let i = first; i < end; i++) {
        const move = moves[i]!;
        const speed = move.rapid ? machine.topSpeed : move.feed / 60;
        limits[at] = i === first ? 0 : Math.min(speed, cornerLimit(moves[i - 1]!, move, machine)) ** 2;
        const after = at + stepsOf(lengthOf(move));
        limits.fill(speed ** 2, at + 1, after + 1);
        at = after;
    }
    limits[count] = 0;
    const twice = 2 * machine.acceleration;
    for (let i = end - 1; i >= first; i--) {
        const length = lengthOf(moves[i]!);
        const steps = stepsOf(length);
        const gain = (twice * length) / steps;
        for (let k = 0; k < steps; k++, at--) limits[at - 1] = Math.min(limits[at - 1]!, limits[at]! + gain);
    }
    let time = 0;
    let speed = 0;
    for (let i = first; i < end; i++) {
        const length = lengthOf(moves[i]!);
        const steps = stepsOf(length);
        const gain = (twice * length) / steps;
        let taken = 0;
        for (let k = 0; k < steps; k++, at++) {
            const before = speed;
            limits[at + 1] = Math.min(limits[at + 1]!, limits[at]! + gain);
            if (limits[at + 1] !== limits[at]) speed = Math.sqrt(limits[at + 1]!);
            if (length > 0) taken += (2 * length) / steps / (before + speed);
        }
        each(moves[i]!, taken);
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
