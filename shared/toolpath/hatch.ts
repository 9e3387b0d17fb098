import type { Region } from '../geometry/region';
import { type Edges, turnedEdges } from './edges';

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
    /** Most segments that are made (default 20 million, 320 MB). */
    readonly most?: number;
}

const MOST_LINES = 5_000_000;

/** The hatch of a region; undefined for a pitch or an angle that is none, or rings that are not finite. */
export function hatch(region: Region, pitch: number, angle: number, options: HatchOptions = {}): Hatch | undefined {
    if (!(pitch > 0) || !Number.isFinite(pitch) || !Number.isFinite(angle)) return undefined;
    const edges = turnedEdges(region, angle);
    if (edges === undefined) return undefined;
    const most = options.most ?? 20_000_000;
    const height = edges.count === 0 ? 0 : edges.maxV - edges.minV;
    let every = Math.max(1, Math.ceil(height / pitch / MOST_LINES));
    for (;;) {
        const made = scan(edges, pitch * every, angle, every, most);
        if (typeof made !== 'number') return made;
        every = Math.max(every + 1, Math.ceil((every * made) / most));
    }
}

/** The hatch at one pitch, or how many segments it would have if that is too many. */
function scan(edges: Edges, pitch: number, angle: number, every: number, most: number): Hatch | number {
    const height = edges.count === 0 ? 0 : edges.maxV - edges.minV;
    const lines = edges.count === 0 ? 0 : Math.max(1, Math.round(height / pitch));
    // The lines stand in the middle of the height, half a pitch from its ends.
    const first = lines === 0 ? 0 : edges.minV + (height - (lines - 1) * pitch) / 2;
    const crossings = countCrossings(edges, first, pitch, lines);
    const total = crossings[lines]!;
    if (total / 2 > most) return total / 2;

    const at = new Float64Array(total);
    fillCrossings(edges, first, pitch, crossings, at);
    const starts = new Uint32Array(lines + 1);
    let write = 0;
    let length = 0;
    let from = 0;
    for (let line = 0; line < lines; line++) {
        const to = crossings[line]!; // fillCrossings has moved each start to its line's end
        sortRange(at, from, to);
        for (let i = from; i + 1 < to; i += 2) {
            const a = at[i]!;
            const b = at[i + 1]!;
            if (b <= a) continue;
            if (write > 2 * starts[line]! && at[write - 1]! >= a) {
                // Two parts that touch are burnt in one go.
                length += b - at[write - 1]!;
                at[write - 1] = b;
                continue;
            }
            at[write++] = a;
            at[write++] = b;
            length += b - a;
        }
        from = to;
        starts[line + 1] = write / 2;
    }
    const ends = write === total ? at : at.slice(0, write);
    return { angle, pitch, first, lines, starts, ends, segments: write / 2, length, every };
}

/** Start of each line's crossings in one array, and at the end how many there are. */
function countCrossings({ count, data }: Edges, first: number, pitch: number, lines: number): Uint32Array {
    const starts = new Uint32Array(lines + 1);
    const change = new Int32Array(lines + 1);
    for (let e = 0; e < count; e++) {
        const from = firstLine(data[4 * e + 1]!, first, pitch);
        const to = firstLine(data[4 * e + 3]!, first, pitch);
        change[from]! += 1;
        change[to]! -= 1;
    }
    let open = 0;
    let sum = 0;
    for (let line = 0; line < lines; line++) {
        starts[line] = sum;
        open += change[line]!;
        sum += open;
    }
    starts[lines] = sum;
    return starts;
}

/** First line at or below v: an edge from v0 to v1 crosses the lines from firstLine(v0) up to, without, firstLine(v1). */
function firstLine(v: number, first: number, pitch: number): number {
    return Math.max(0, Math.ceil((v - first) / pitch));
}

function fillCrossings({ count, data }: Edges, first: number, pitch: number, starts: Uint32Array, at: Float64Array): void {
    for (let e = 0; e < count; e++) {
        const u0 = data[4 * e]!;
        const v0 = data[4 * e + 1]!;
        const from = firstLine(v0, first, pitch);
        const to = firstLine(data[4 * e + 3]!, first, pitch);
        const slope = (data[4 * e + 2]! - u0) / (data[4 * e + 3]! - v0);
        for (let line = from; line < to; line++) {
            at[starts[line]!] = u0 + (first + line * pitch - v0) * slope;
            starts[line]! += 1;
        }
    }
}

/** Sorts at[from..to) upwards: by insertion while short, as lines mostly are. */
function sortRange(at: Float64Array, from: number, to: number): void {
    if (to - from > 48) {
        at.subarray(from, to).sort();
        return;
    }
    for (let i = from + 1; i < to; i++) {
        const value = at[i]!;
        let j = i - 1;
        while (j >= from && at[j]! > value) {
            at[j + 1] = at[j]!;
            j--;
        }
        at[j + 1] = value;
    }
}
