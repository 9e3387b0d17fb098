import type { Region } from '../geometry/region';

/** Level extent of a region in the frame of the scan lines: how far it reaches across them. */
export interface ExtentAcross {
    readonly minV: number;
    readonly maxV: number;
}

/** Undefined if a coordinate is not finite or beyond any field; minV > maxV for a region without points. */
export function extentAcross(region: Region, angle: number): ExtentAcross | undefined {
    const { cos, sin } = exactTurn(angle);
    let minV = Number.POSITIVE_INFINITY;
    let maxV = Number.NEGATIVE_INFINITY;
    for (const ring of region.rings) {
        const length = evenLength(ring);
        for (let i = 0; i < length; i += 2) {
            const x = ring[i]!;
            const y = ring[i + 1]!;
            if (!(Math.abs(x) < 1e9 && Math.abs(y) < 1e9)) return undefined;
            const v = y * cos - x * sin;
            if (v < minV) minV = v;
            if (v > maxV) maxV = v;
        }
    }
    return { minV, maxV };
}

/** The edges that cross scan lines, and how often each line is crossed. */
export interface Crossed {
    /** Of each edge, u at line 0 and what each further line adds to it. */
    readonly places: Float64Array;
    /** Each edge crosses the lines from ranges[2e] up to, without, ranges[2e + 1]. */
    readonly ranges: Int32Array;
    readonly edges: number;
    /** Start of each line's crossings in one array, and at the end how many there are. */
    readonly starts: Uint32Array;
}

/** Lines stand at v = first + k·pitch, k from 0 up to, without, `lines`. */
export function crossedEdges(region: Region, angle: number, first: number, pitch: number, lines: number): Crossed {
    const { cos, sin } = exactTurn(angle);
    const points = region.rings.reduce((sum, ring) => sum + evenLength(ring) / 2, 0);
    const places = new Float64Array(2 * points);
    const ranges = new Int32Array(2 * points);
    const change = new Int32Array(lines + 1);
    const perPitch = 1 / pitch;
    let edges = 0;
    for (const ring of region.rings) {
        const length = evenLength(ring);
        if (length === 0) continue;
        let u0 = ring[length - 2]! * cos + ring[length - 1]! * sin;
        let v0 = ring[length - 1]! * cos - ring[length - 2]! * sin;
        // The first line at or below a point, worked out once a point, so that edges that meet agree on it.
        let line0 = lineFrom(v0, first, perPitch, lines);
        for (let i = 0; i < length; i += 2) {
            const u1 = ring[i]! * cos + ring[i + 1]! * sin;
            const v1 = ring[i + 1]! * cos - ring[i]! * sin;
            const line1 = lineFrom(v1, first, perPitch, lines);
            if (line0 !== line1) {
                const from = Math.min(line0, line1);
                const to = Math.max(line0, line1);
                const slope = (u1 - u0) / (v1 - v0);
                if (to - from === 1) {
                    // An almost level edge has next to no say in where it is crossed; it is held to its own ends.
                    const u = u0 + (first + from * pitch - v0) * slope;
                    places[2 * edges] = Math.min(Math.max(u, Math.min(u0, u1)), Math.max(u0, u1));
                    places[2 * edges + 1] = 0;
                } else {
                    places[2 * edges] = u0 + (first - v0) * slope;
                    places[2 * edges + 1] = slope * pitch;
                }
                ranges[2 * edges] = from;
                ranges[2 * edges + 1] = to;
                change[from]! += 1;
                change[to]! -= 1;
                edges++;
            }
            u0 = u1;
            v0 = v1;
            line0 = line1;
        }
    }
    return { places, ranges, edges, starts: startsOf(change) };
}

function lineFrom(v: number, first: number, perPitch: number, lines: number): number {
    const line = Math.ceil((v - first) * perPitch);
    return Math.min(Math.max(line, 0), lines);
}

/** From how the number of edges changes at each line to where each line's crossings start. */
function startsOf(change: Int32Array): Uint32Array {
    const lines = change.length - 1;
    const starts = new Uint32Array(lines + 1);
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

/** Rings of fewer than three points enclose nothing. */
function evenLength(ring: Float64Array): number {
    return ring.length < 6 ? 0 : ring.length - (ring.length % 2);
}

/** Cosine and sine, exact at right angles so that lines along an axis stay on it. */
export function exactTurn(angle: number): { cos: number; sin: number } {
    const quarters = angle / (Math.PI / 2);
    const whole = Math.round(quarters);
    if (Math.abs(quarters - whole) > 1e-12) return { cos: Math.cos(angle), sin: Math.sin(angle) };
    const quarter = ((whole % 4) + 4) % 4;
    return { cos: [1, 0, -1, 0][quarter]!, sin: [0, 1, 0, -1][quarter]! };
}
