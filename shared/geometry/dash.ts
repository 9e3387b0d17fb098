import type { Path } from './widen';

/** More dashes than this are not cut: nobody could tell them from a solid line, and memory is bounded. */
const mostDashes = 200_000;

/**
 * Cuts paths into dashes by SVG's rules. An odd pattern is repeated once; one with a negative or
 * non-finite length, or nothing but zeros, leaves the paths solid, and so does one so fine that
 * it would give more than 200 000 dashes. Lengths are in the paths' own units. A dash of no
 * length comes back as two equal points, for its caps. A closed path whose last dash reaches its
 * first one gets both in one piece.
 */
export function dash(paths: readonly Path[], array: readonly number[], offset: number): readonly Path[] {
    const pattern = array.length % 2 === 0 ? array : [...array, ...array];
    let period = 0;
    for (const length of pattern) {
        if (!(length >= 0) || !Number.isFinite(length)) return paths;
        period += length;
    }
    if (!(period > 0) || !Number.isFinite(period)) return paths;
    let total = 0;
    for (const path of paths) total += lengthOf(path);
    if (!((total / period) * pattern.length <= mostDashes)) return paths;
    const start = Number.isFinite(offset) ? ((offset % period) + period) % period : 0;
    const dashes: Path[] = [];
    for (const path of paths) cut(path, pattern, start, dashes);
    return dashes;
}

function cut(path: Path, pattern: readonly number[], start: number, dashes: Path[]): void {
    let { index, left } = stretchAt(pattern, start);
    const { points } = path;
    const size = points.length;
    const corners = path.closed ? size / 2 : size / 2 - 1;
    const firstDash = dashes.length;
    const startsOn = index % 2 === 0;
    let current: number[] = startsOn && size >= 2 ? [points[0]!, points[1]!] : [];
    for (let corner = 0; corner < corners; corner++) {
        const from = 2 * corner;
        const to = corner === size / 2 - 1 ? 0 : from + 2;
        const dx = points[to]! - points[from]!;
        const dy = points[to + 1]! - points[from + 1]!;
        const length = Math.hypot(dx, dy);
        let gone = 0;
        while (length - gone > left) {
            gone += left;
            const x = points[from]! + (dx * gone) / length;
            const y = points[from + 1]! + (dy * gone) / length;
            if (index % 2 === 0) {
                current.push(x, y);
                dashes.push(open(current));
                current = [];
            } else {
                current = [x, y];
            }
            index = (index + 1) % pattern.length;
            left = pattern[index]!;
        }
        left -= length - gone;
        if (index % 2 === 0) current.push(points[to]!, points[to + 1]!);
    }
    if (current.length < 4) return;
    const first = dashes[firstDash];
    if (!path.closed || !startsOn) dashes.push(open(current));
    // A pattern that never came to its first gap leaves a closed path closed.
    else if (first === undefined) dashes.push(path);
    else dashes[firstDash] = open([...current, ...first.points.subarray(2)]);
}

/** The stretch of a pattern that lies `start` behind its beginning, within one period, and what is left of it there. */
function stretchAt(pattern: readonly number[], start: number): { index: number; left: number } {
    let index = 0;
    let skip = start;
    // A dash of no length right at the start is not skipped: it is a dot.
    while (skip > 0 && skip >= pattern[index]!) {
        skip -= pattern[index]!;
        index = (index + 1) % pattern.length;
    }
    return { index, left: pattern[index]! - skip };
}

function open(points: readonly number[]): Path {
    return { points: Float64Array.from(points), closed: false };
}

function lengthOf({ points, closed }: Path): number {
    let sum = 0;
    for (let i = 2; i + 1 < points.length; i += 2)
        sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
    const size = points.length;
    if (closed && size > 2) sum += Math.hypot(points[0]! - points[size - 2]!, points[1]! - points[size - 1]!);
    return sum;
}
