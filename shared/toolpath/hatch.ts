import type { Region } from '../geometry/region';
import { crossedEdges, type ExtentAcross, extentAcross } from './edges';
import { StretchSorter } from './sort-stretch';

/**
 * The scan lines of an area pass as flat arrays. Lines lie along u, `angle` radians from x towards y
 * (so clockwise as seen, since y points down); line k stands at v = first + k·pitch, where
 * x = u·cos − v·sin and y = u·sin + v·cos.
 */
export interface Hatch {
    readonly angle: number;
    /** Distance of the lines that were made. */
    readonly pitch: number;
    readonly first: number;
    /** Scan lines, with those that burn nothing. */
    readonly lines: number;
    /** Segments of line k are those from starts[k] up to, without, starts[k + 1]. */
    readonly starts: Uint32Array;
    /** Segment i burns from ends[2i] to ends[2i + 1] along u (mm), ends[2i] < ends[2i + 1]. */
    readonly ends: Float64Array;
    readonly segments: number;
    /** Burnt length (mm). */
    readonly length: number;
    /**
     * 1 if all lines are there. Else only every such line was made, at a pitch so many times wider, since
     * all would be too many: good enough to look at and to estimate from, not to cut with.
     */
    readonly every: number;
}

export interface HatchOptions {
    /** Most segments that are made (default 5 million, 80 MB). */
    readonly most?: number;
}

/** Scan lines that are given: the first at v = `first`, `lines` of them. */
export interface Lines {
    readonly angle: number;
    readonly pitch: number;
    readonly first: number;
    readonly lines: number;
}

const MOST_LINES = 1_000_000;

/** The hatch of a region; undefined for a pitch that is not a positive finite number, or an angle or rings that are not finite. */
export function hatch(region: Region, pitch: number, angle: number, options: HatchOptions = {}): Hatch | undefined {
    if (!(pitch > 0) || !Number.isFinite(pitch) || !Number.isFinite(angle)) return undefined;
    const extent = extentAcross(region, angle);
    if (extent === undefined) return undefined;
    const most = options.most ?? 5_000_000;
    let every = Math.max(1, Math.ceil((extent.maxV - extent.minV) / pitch / MOST_LINES));
    for (;;) {
        const made = scan(region, extent, pitch * every, angle, every, most);
        if (typeof made !== 'number') return made;
        every = Math.max(every + 1, Math.ceil((every * made) / most));
    }
}

/** The hatch at one pitch, or how many segments it would have if that is too many. */
function scan(
    region: Region,
    { minV, maxV }: ExtentAcross,
    pitch: number,
    angle: number,
    every: number,
    most: number,
): Hatch | number {
    const height = maxV - minV;
    const lines = height > 0 ? Math.max(1, Math.round(height / pitch)) : 0;
    // The lines stand in the middle of the height, half a pitch from its ends.
    const first = lines === 0 ? 0 : minV + (height - (lines - 1) * pitch) / 2;
    return hatchAlong(region, { angle, pitch, first, lines }, every, most);
}

/** What of a region lies on given lines, or how many segments that would be if more than `most`. */
export function hatchAlong(region: Region, { angle, pitch, first, lines }: Lines, every = 1, most = 5_000_000): Hatch | number {
    const { places, ranges, edges, starts: next } = crossedEdges(region, angle, first, pitch, lines);
    const total = next[lines]!;
    // One line is made even where it holds too many: no wider pitch would help.
    if (total / 2 > most && lines > 1) return total / 2;

    const at = new Float64Array(total);
    for (let e = 0; e < edges; e++) {
        const u = places[2 * e]!;
        const step = places[2 * e + 1]!;
        const to = ranges[2 * e + 1]!;
        for (let line = ranges[2 * e]!; line < to; line++) {
            at[next[line]!] = u + line * step;
            next[line]! += 1;
        }
    }
    return { angle, pitch, first, lines, ...paired(at, next, lines), every };
}

/** Turns each line's crossings into segments, in place; lineEnds[k] is where those of line k end. */
function paired(at: Float64Array, lineEnds: Uint32Array, lines: number): Pick<Hatch, 'starts' | 'ends' | 'segments' | 'length'> {
    const sorter = new StretchSorter();
    const starts = new Uint32Array(lines + 1);
    let write = 0;
    let length = 0;
    let from = 0;
    for (let line = 0; line < lines; line++) {
        const to = lineEnds[line]!;
        const lineStart = write;
        sorter.sort(at, from, to);
        for (let i = from; i + 1 < to; i += 2) {
            const a = at[i]!;
            const b = at[i + 1]!;
            if (b <= a) continue;
            length += b - a;
            if (write > lineStart && at[write - 1]! >= a) {
                // Two parts that touch are burnt in one go.
                at[write - 1] = b;
                continue;
            }
            at[write++] = a;
            at[write++] = b;
        }
        from = to;
        starts[line + 1] = write / 2;
    }
    return { starts, ends: write === at.length ? at : at.slice(0, write), segments: write / 2, length };
}
