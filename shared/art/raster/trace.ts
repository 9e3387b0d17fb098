import type { Region, Ring } from '../../geometry/region';
import type { Raster } from './raster';
import { resample } from './resample';

const mostCorners = 250_000;

/**
 * The region of the pixels darker than `threshold` (0 to 1), in pixels of the given size in mm.
 * A picture so noisy that its edges would have more than a quarter of a million corners is taken coarser
 * until they have not.
 */
export function traceWithin(raster: Raster, threshold: number, pixel: { width: number; height: number }): Region {
    let at = raster;
    let size = pixel;
    for (;;) {
        const region = trace(at, threshold, size, mostCorners);
        if (region !== undefined) return region;
        const columns = Math.ceil(at.columns / 2);
        const rows = Math.ceil(at.rows / 2);
        size = { width: (size.width * at.columns) / columns, height: (size.height * at.rows) / rows };
        at = resample(at, columns, rows);
    }
}

/**
 * The region of the pixels darker than `threshold` (0 to 1), in pixels of the given size in mm.
 * Its edges run along the pixels'. Dark pixels that touch only at a corner stay apart, so no ring
 * crosses itself. Undefined if it would have more than `most` corners.
 */
function trace(raster: Raster, threshold: number, pixel: { width: number; height: number }, most: number): Region | undefined {
    const { columns, rows, darkness } = raster;
    const limit = threshold * 255;
    const dark = (x: number, y: number) => x >= 0 && y >= 0 && x < columns && y < rows && darkness[y * columns + x]! > limit;
    /** Upper edges already walked along. */
    const walked = new Uint8Array(columns * rows);
    // All rings side by side, so that a noisy picture's do not fill the memory before they are known to be too many.
    const corners = new Corners(most);
    for (let y = 0; y < rows; y++) {
        for (let x = 0; x < columns; x++) {
            if (walked[y * columns + x] === 1 || !dark(x, y) || dark(x, y - 1)) continue;
            if (!follow(x, y, dark, walked, columns, corners)) return undefined;
        }
    }
    return { rings: corners.rings(pixel) };
}

/** Corners of rings, in pixels, up to so many. */
class Corners {
    private readonly values: Int32Array;
    private count = 0;
    /** Where each ring ends among the values. */
    private readonly ends: number[] = [];

    constructor(most: number) {
        this.values = new Int32Array(2 * most);
    }

    /** False if there is no room left. */
    add(x: number, y: number): boolean {
        if (this.count === this.values.length) return false;
        this.values[this.count++] = x;
        this.values[this.count++] = y;
        return true;
    }

    endRing(): void {
        this.ends.push(this.count);
    }

    rings(pixel: { width: number; height: number }): Ring[] {
        let from = 0;
        return this.ends.map((end) => {
            const ring = new Float64Array(end - from);
            for (let i = 0; i < ring.length; i++) ring[i] = this.values[from + i]! * (i % 2 === 0 ? pixel.width : pixel.height);
            from = end;
            return ring;
        });
    }
}

/** Directions clockwise as seen: right, down, left, up. */
const stepX = [1, 0, -1, 0];
const stepY = [0, 1, 0, -1];
/** From a pixels' corner to the pixel that is ahead of it on the right hand, and on the left. */
const rightX = [0, -1, -1, 0];
const rightY = [0, 0, -1, -1];
const leftX = [0, 0, -1, -1];
const leftY = [-1, 0, 0, -1];

/** Follows one edge with the dark on the right hand, from the left end of a pixel's upper side. False where its corners have no room. */
function follow(
    startX: number,
    startY: number,
    dark: (x: number, y: number) => boolean,
    walked: Uint8Array,
    columns: number,
    corners: Corners,
): boolean {
    let x = startX;
    let y = startY;
    let direction = 0;
    do {
        if (direction === 0) walked[y * columns + x] = 1;
        x += stepX[direction]!;
        y += stepY[direction]!;
        const right = dark(x + rightX[direction]!, y + rightY[direction]!);
        const left = dark(x + leftX[direction]!, y + leftY[direction]!);
        let turned = direction;
        if (!right) turned = (direction + 1) % 4;
        else if (left) turned = (direction + 3) % 4;
        if (turned !== direction) {
            if (!corners.add(x, y)) return false;
            direction = turned;
        }
    } while (x !== startX || y !== startY || direction !== 0);
    corners.endRing();
    return true;
}
