import type { Ring } from './region';

/**
 * The one boundary between millimetres and the whole numbers on which polygon engines are exact.
 * 0.1 um is far below what wood or a beam can show.
 */
export const unitsPerMillimetre = 10_000;

/**
 * Coordinates beyond this many millimetres are pulled back to it: a hundred metres is past any
 * machine, and the engines' products still fit 64 bits. Points that are not finite are left out,
 * as if they had not been written. So no input throws, and only shapes nobody could burn change.
 */
export const farthest = 100_000;

/**
 * A ring in whole units, without repeated points and without points on the straight line between
 * their neighbours (spikes included): they enclose nothing, and a polygon engine can stumble over
 * a spike along a horizontal. Undefined if nothing with an area is left.
 */
export function toGrid(ring: Ring): Float64Array | undefined {
    const out = new Float64Array(ring.length);
    let count = 0;
    for (let i = 0; i + 1 < ring.length; i += 2) {
        const x = toUnits(ring[i]!);
        const y = toUnits(ring[i + 1]!);
        if (Number.isNaN(x) || Number.isNaN(y)) continue;
        count = push(out, count, x, y);
    }
    return trimEnds(out, count);
}

/** Back to millimetres. */
export function fromGrid(units: ArrayLike<number>): Ring {
    const ring = new Float64Array(units.length);
    for (let i = 0; i < units.length; i++) ring[i] = units[i]! / unitsPerMillimetre;
    return ring;
}

function toUnits(millimetres: number): number {
    if (!Number.isFinite(millimetres)) return Number.NaN;
    const kept = Math.max(-farthest, Math.min(farthest, millimetres));
    // Adding 0 turns a negative zero into a plain one.
    return Math.round(kept * unitsPerMillimetre) + 0;
}

/** Appends a point to `out`, whose first `count` numbers are in use, and drops what it makes straight. Returns the new count. */
function push(out: Float64Array, count: number, x: number, y: number): number {
    let used = count;
    while (used >= 2) {
        const lastX = out[used - 2]!;
        const lastY = out[used - 1]!;
        if (lastX === x && lastY === y) return used;
        if (used < 4 || !straight(out[used - 4]!, out[used - 3]!, lastX, lastY, x, y)) break;
        used -= 2;
    }
    out[used] = x;
    out[used + 1] = y;
    return used + 2;
}

/** Does the same across the seam between the last point and the first. */
function trimEnds(points: Float64Array, count: number): Float64Array | undefined {
    let start = 0;
    let end = count;
    for (let changed = true; changed && end - start >= 6; ) {
        changed = false;
        const x = points[start]!;
        const y = points[start + 1]!;
        const lastX = points[end - 2]!;
        const lastY = points[end - 1]!;
        if ((lastX === x && lastY === y) || straight(points[end - 4]!, points[end - 3]!, lastX, lastY, x, y)) {
            end -= 2;
            changed = true;
        } else if (straight(lastX, lastY, x, y, points[start + 2]!, points[start + 3]!)) {
            start += 2;
            changed = true;
        }
    }
    return end - start >= 6 ? points.subarray(start, end) : undefined;
}

function straight(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): boolean {
    return (bx - ax) * (cy - by) === (by - ay) * (cx - bx);
}
