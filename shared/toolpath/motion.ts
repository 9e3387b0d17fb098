/** What the machine's axes can do: mm/s and mm/s2. */
export interface Motion {
    readonly topSpeed: number;
    readonly acceleration: number;
}

/**
 * Time (s) to move a distance from rest to rest with a trapezoid of speed: d/v + v/a where the speed
 * is reached, else 2√(d/a). 0 for no distance; NaN for a speed or an acceleration that is not positive.
 */
export function moveTime(distance: number, speed: number, acceleration: number): number {
    if (!(speed > 0 && acceleration > 0)) return Number.NaN;
    if (!(distance > 0)) return 0;
    return distance >= (speed * speed) / acceleration
        ? distance / speed + speed / acceleration
        : 2 * Math.sqrt(distance / acceleration);
}

/** Distance (mm) in which a speed is reached from rest, and the other way round. */
export function runUp(speed: number, acceleration: number): number {
    return (speed * speed) / (2 * acceleration);
}

/**
 * Time (s) over a straight piece entered and left at given speeds, both within what the distance allows,
 * with a top speed between them.
 */
export function pieceTime(distance: number, enter: number, leave: number, speed: number, acceleration: number): number {
    const peak = Math.min(speed, Math.sqrt(acceleration * distance + (enter * enter + leave * leave) / 2));
    const ramps = (2 * peak * peak - enter * enter - leave * leave) / (2 * acceleration);
    const coast = Math.max(0, distance - ramps);
    return (2 * peak - enter - leave) / acceleration + (peak > 0 ? coast / peak : 0);
}

/**
 * Highest speed round a corner that turns by `turn` radians, if the path may leave the corner by
 * `tolerance` mm: the arc that touches both sides and passes the corner at that distance has the radius
 * r = t·cos(turn/2) / (1 − cos(turn/2)), and v²/r is held to the acceleration (own derivation). Chords of a
 * curve of radius R that were cut to the same tolerance come out at √(a·R), the curve's own limit.
 */
export function cornerSpeed(turn: number, acceleration: number, tolerance: number): number {
    const half = Math.cos(Math.min(Math.abs(turn), Math.PI) / 2);
    if (half >= 1) return Number.POSITIVE_INFINITY;
    return Math.sqrt((acceleration * tolerance * Math.max(0, half)) / (1 - half));
}
