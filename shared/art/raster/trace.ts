import type { Region, Ring } from '../../geometry/region';
import type { Raster } from './raster';
import { resample } from './resample';

const mostCorners = 1_000_000;

/**
 * The region of the pixels darker than `threshold` (0 to 1), in pixels of the given size in mm.
 * A picture so noisy that its edges would have more than a million corners is taken coarser
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
    const rings: Ring[] = [];
    let corners = 0;
    for (let y = 0; y < rows; y++) {
        for (let x = 0; x < columns; x++) {
            if (walked[y * columns + x] === 1 || !dark(x, y) || dark(x, y - 1)) continue;
            const ring = follow(x, y, dark, walked, columns, most - corners);
            if (ring === undefined) return undefined;
            corners += ring.length / 2;
            rings.push(Float64Array.from(ring, (value, i) => value * (i % 2 === 0 ? pixel.width : pixel.height)));
        }
    }
    return { rings };
}

/** Directions clockwise as seen: right, down, left, up. */
const stepX = [1, 0, -1, 0];
const stepY = [0, 1, 0, -1];
/** From a pixels' corner to the pixel that is ahead of it on the right hand, and on the left. */
const rightX = [0, -1, -1, 0];
const rightY = [0, 0, -1, -1];
const leftX = [0, 0, -1, -1];
const leftY = [-1, 0, 0, -1];

/** Follows one edge with the dark on the right hand, from the left end of a pixel's upper side, and answers its corners in pixels. */
function follow(
    startX: number,
    startY: number,
    dark: (x: number, y: number) => boolean,
    walked: Uint8Array,
    columns: number,
    most: number,
): number[] | undefined {
    const corners: number[] = [];
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
            corners.push(x, y);
            direction = turned;
            if (corners.length > 2 * most) return undefined;
        }
    } while (x !== startX || y !== startY || direction !== 0);
    return corners;
}
