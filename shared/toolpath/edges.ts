import type { Region } from '../geometry/region';

/** Edges of rings in the frame of the scan lines, each from its lower to its higher v; level ones are left out. */
export interface Edges {
    /** u0, v0, u1, v1 of each edge. */
    readonly data: Float64Array;
    readonly count: number;
    readonly minV: number;
    readonly maxV: number;
}

/** Undefined if a coordinate is not finite or beyond any field. */
export function turnedEdges(region: Region, angle: number): Edges | undefined {
    const { cos, sin } = exactTurn(angle);
    const points = region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);
    const data = new Float64Array(4 * points);
    let count = 0;
    let minV = Number.POSITIVE_INFINITY;
    let maxV = Number.NEGATIVE_INFINITY;
    for (const ring of region.rings) {
        const length = ring.length - (ring.length % 2);
        if (length < 6) continue;
        let u0 = ring[length - 2]! * cos + ring[length - 1]! * sin;
        let v0 = ring[length - 1]! * cos - ring[length - 2]! * sin;
        for (let i = 0; i < length; i += 2) {
            const u1 = ring[i]! * cos + ring[i + 1]! * sin;
            const v1 = ring[i + 1]! * cos - ring[i]! * sin;
            if (!(Math.abs(u1) < 1e9 && Math.abs(v1) < 1e9)) return undefined;
            if (v1 < minV) minV = v1;
            if (v1 > maxV) maxV = v1;
            if (v0 !== v1) {
                const up = v0 < v1;
                const at = 4 * count++;
                data[at] = up ? u0 : u1;
                data[at + 1] = up ? v0 : v1;
                data[at + 2] = up ? u1 : u0;
                data[at + 3] = up ? v1 : v0;
            }
            u0 = u1;
            v0 = v1;
        }
    }
    return { data, count, minV, maxV };
}

/** Cosine and sine, exact at right angles so that lines along an axis stay on it. */
export function exactTurn(angle: number): { cos: number; sin: number } {
    const quarters = angle / (Math.PI / 2);
    const whole = Math.round(quarters);
    if (Math.abs(quarters - whole) > 1e-12) return { cos: Math.cos(angle), sin: Math.sin(angle) };
    const quarter = ((whole % 4) + 4) % 4;
    return { cos: [1, 0, -1, 0][quarter]!, sin: [0, 1, 0, -1][quarter]! };
}
