import type { Region } from './region';

/**
 * How much of each cell of a round grid a region covers: a picture in which turning is shifting
 * and mirroring is running backwards, so that symmetries can be looked for cheaply.
 */
export interface PolarPicture {
    readonly rays: number;
    readonly rings: number;
    /** Covered part, 0 to 1, of the cell at `ray * rings + ring`, taken along the middle of the ray. */
    readonly cover: Float32Array;
    /** Area of a cell in mm2, by its ring. */
    readonly cellArea: Float64Array;
}

/** 2520 has every divisor up to 10, so that most turns are whole numbers of rays. */
const mostRays = 2520;
const fewestRays = 360;
const rings = 40;
/** Bounds the time for art of long thin edges: this many crossings of edges with rays take well under a second. */
const mostCrossings = 20_000_000;

export function polarPicture(region: Region, centreX: number, centreY: number): PolarPicture {
    const { radius, turns } = extent(region, centreX, centreY);
    const rays = turns * mostRays > mostCrossings ? fewestRays : mostRays;
    const width = radius > 0 ? radius / rings : 1;
    const cover = new Float32Array(rays * rings);
    const filled = new Int32Array(rays * rings);
    for (const ring of region.rings) {
        const size = ring.length;
        let x0 = ring[size - 2]! - centreX;
        let y0 = ring[size - 1]! - centreY;
        let angle0 = Math.atan2(y0, x0);
        for (let i = 0; i < size; i += 2) {
            const x1 = ring[i]! - centreX;
            const y1 = ring[i + 1]! - centreY;
            const angle1 = Math.atan2(y1, x1);
            addEdge(cover, filled, rays, width, x0, y0, x1 - x0, y1 - y0, angle0, angle1);
            x0 = x1;
            y0 = y1;
            angle0 = angle1;
        }
    }
    for (let ray = 0; ray < rays; ray++) {
        let within = 0;
        for (let at = (ray + 1) * rings - 1; at >= ray * rings; at--) {
            within += filled[at]!;
            cover[at]! += within;
        }
    }
    const cellArea = Float64Array.from({ length: rings }, (_, ring) => ((2 * ring + 1) * width * width * Math.PI) / rays);
    return { rays, rings, cover, cellArea };
}

/**
 * Adds what lies between the centre and an edge, or takes it away if the edge runs backwards, along
 * every ray that it crosses: to `cover` for the cell in which the ray meets it, to the outermost
 * of the cells that are whole in `filled`.
 */
function addEdge(
    cover: Float32Array,
    filled: Int32Array,
    rays: number,
    width: number,
    x0: number,
    y0: number,
    dx: number,
    dy: number,
    angle0: number,
    angle1: number,
): void {
    let swept = angle1 - angle0;
    if (swept > Math.PI) swept -= 2 * Math.PI;
    else if (swept < -Math.PI) swept += 2 * Math.PI;
    const sign = swept < 0 ? -1 : 1;
    const step = (2 * Math.PI) / rays;
    const start = angle0 / step;
    const end = (angle0 + swept) / step;
    const first = Math.ceil(Math.min(start, end) - 0.5);
    const last = Math.ceil(Math.max(start, end) - 0.5) - 1;
    const moment = x0 * dy - y0 * dx;
    for (let k = first; k <= last; k++) {
        const angle = (k + 0.5) * step;
        const distance = moment / (Math.cos(angle) * dy - Math.sin(angle) * dx);
        if (!(distance > 0)) continue;
        const ray = ((k % rays) + rays) % rays;
        const whole = Math.min(rings, Math.floor(distance / width));
        const at = ray * rings;
        if (whole > 0) filled[at + whole - 1]! += sign;
        if (whole < rings) {
            const inner = whole * width;
            cover[at + whole]! += (sign * (distance * distance - inner * inner)) / ((2 * whole + 1) * width * width);
        }
    }
}

/** The farthest point's distance in mm, and how many turns all edges sweep together. */
function extent(region: Region, centreX: number, centreY: number): { radius: number; turns: number } {
    let farthest = 0;
    let swept = 0;
    for (const ring of region.rings) {
        const size = ring.length;
        let x0 = ring[size - 2]! - centreX;
        let y0 = ring[size - 1]! - centreY;
        for (let i = 0; i < size; i += 2) {
            const x1 = ring[i]! - centreX;
            const y1 = ring[i + 1]! - centreY;
            const square = x1 * x1 + y1 * y1;
            if (square > farthest) farthest = square;
            swept += Math.abs(Math.atan2(x0 * y1 - x1 * y0, x0 * x1 + y0 * y1));
            x0 = x1;
            y0 = y1;
        }
    }
    return { radius: Math.sqrt(farthest), turns: swept / (2 * Math.PI) };
}

/** Area in mm2 of the difference between the picture and itself turned by a number of rays; once it passes `stop`, anything above that. */
export function turnedDifference(picture: PolarPicture, shift: number, stop = Number.POSITIVE_INFINITY): number {
    const { rays, rings: count, cover, cellArea } = picture;
    let sum = 0;
    for (let ray = 0; ray < rays && sum <= stop; ray++) {
        const here = ray * count;
        const there = ((ray + shift) % rays) * count;
        for (let ring = 0; ring < count; ring++) sum += Math.abs(cover[here + ring]! - cover[there + ring]!) * cellArea[ring]!;
    }
    return sum;
}

/** The same for the picture mirrored about the axis at `axis` half rays from the x axis; the same of `stop`. */
export function mirroredDifference(picture: PolarPicture, axis: number, stop = Number.POSITIVE_INFINITY): number {
    const { rays, rings: count, cover, cellArea } = picture;
    let sum = 0;
    for (let ray = 0; ray < rays && sum <= stop; ray++) {
        const here = ray * count;
        const there = ((((axis - 1 - ray) % rays) + rays) % rays) * count;
        for (let ring = 0; ring < count; ring++) sum += Math.abs(cover[here + ring]! - cover[there + ring]!) * cellArea[ring]!;
    }
    return sum;
}

/** The picture with fewer rays, `parts` of them taken together. */
export function coarser(picture: PolarPicture, parts: number): PolarPicture {
    const rays = picture.rays / parts;
    const cover = new Float32Array(rays * picture.rings);
    for (let ray = 0; ray < picture.rays; ray++) {
        const to = Math.floor(ray / parts) * picture.rings;
        const from = ray * picture.rings;
        for (let ring = 0; ring < picture.rings; ring++) cover[to + ring]! += picture.cover[from + ring]! / parts;
    }
    return { rays, rings: picture.rings, cover, cellArea: picture.cellArea.map((area) => area * parts) };
}
