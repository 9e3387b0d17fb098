import type { Motion } from './motion';
import type { Path } from './path';
import { pathTime, speedsAlong } from './time';

/** So many times the time at an even speed paths may take at a speed that counts as held: start, end and sharp corners are in it. */
const HELD = 1.1;
/** The slowest that is looked for, mm/s. */
const SLOWEST = 5;
/** Parts of a run-up in which the power follows the speed by steps. */
const STEPS = 4;
/** A run-up shorter than this is one step, mm. */
const SHORT = 0.05;

/** The fastest speed (mm/s) that the head holds along paths, but for sharp corners. Tried from the top speed downwards by tenths; O(n) of the points each. */
export function heldSpeed(paths: readonly Path[], { topSpeed, acceleration }: Motion): number {
    for (let speed = topSpeed; speed > SLOWEST; speed *= 0.9) {
        let [time, even] = [0, 0];
        for (const path of paths) {
            const followed = pathTime(path, speed, acceleration);
            time += followed.time;
            even += followed.lit / speed;
        }
        if (time <= HELD * even) return speed;
    }
    return Math.min(SLOWEST, topSpeed);
}

/**
 * A path on which the power goes with the speed that the head has there, so that all of it gets the same energy per length: pieces along
 * which it changes are cut into steps. Adds points on the straight only, so that time and way stay the same.
 * @param least part of the power below which the laser does not hold it
 */
export function withEvenEnergy(path: Path, speed: number, acceleration: number, least: number): Path {
    const { points, pace } = inSteps(path, speed, acceleration);
    return { points, share: pace.map((part) => Math.min(1, Math.max(least, part))) };
}

/** A path cut into steps where the head's speed changes. */
export interface SteppedPath {
    readonly points: Float64Array;
    /** For each piece the mean speed at its two ends as a part of the set one. */
    readonly pace: Float64Array;
    /** For each piece the index of the one that it was cut from. */
    readonly of: Uint32Array;
}

/** Adds points on the straight only, so that time and way stay the same. */
export function inSteps({ points }: Path, speed: number, acceleration: number): SteppedPath {
    const { lengths, squares } = speedsAlong(points, speed, acceleration);
    const made: number[] = [points[0]!, points[1]!];
    const paces: number[] = [];
    const of: number[] = [];
    for (let i = 0; i < lengths.length; i++) {
        const [length, enter, leave] = [lengths[i]!, squares[i]!, squares[i + 1]!];
        const peak = Math.min(speed ** 2, acceleration * length + (enter + leave) / 2);
        const speedAt = (way: number): number =>
            Math.sqrt(Math.min(peak, enter + 2 * acceleration * way, leave + 2 * acceleration * (length - way)));
        const ways = [
            ...rampSteps((peak - enter) / (2 * acceleration)),
            ...rampSteps((peak - leave) / (2 * acceleration))
                .map((way) => length - way)
                .reverse(),
            length,
        ].filter((way, k, all) => way > 1e-6 && way <= length && (k === 0 || way > all[k - 1]! + 1e-6));
        let from = 0;
        for (const way of ways.length === 0 ? [length] : ways) {
            const part = length > 0 ? way / length : 1;
            made.push(
                points[2 * i]! + part * (points[2 * i + 2]! - points[2 * i]!),
                points[2 * i + 1]! + part * (points[2 * i + 3]! - points[2 * i + 1]!),
            );
            paces.push((speedAt(from) + speedAt(way)) / 2 / speed);
            of.push(i);
            from = way;
        }
    }
    return { points: Float64Array.from(made), pace: Float64Array.from(paces), of: Uint32Array.from(of) };
}

/** Ways from the beginning of a run-up at which the power is set anew. */
function rampSteps(length: number): number[] {
    const steps = length < SHORT ? (length > 0 ? 1 : 0) : STEPS;
    return Array.from({ length: steps }, (_, k) => (length * (k + 1)) / steps);
}
