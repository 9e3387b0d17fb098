import type { Raster } from './raster';

/** The picture with other numbers of columns and rows, each new pixel the mean of what it covers of the old ones. */
export function resample(raster: Raster, columns: number, rows: number): Raster {
    const across = shrink(raster.darkness, raster.columns, raster.rows, columns, 1, raster.columns, columns);
    const down = shrink(across, raster.rows, columns, rows, columns, 1, 1);
    const darkness = new Uint8Array(down.length);
    for (let i = 0; i < down.length; i++) darkness[i] = Math.round(down[i]!);
    return { columns, rows, darkness };
}

/**
 * Along one axis: `lines` lines of `from` values become lines of `to` values. `stride` is from value
 * to value of a line, in the old values and the new ones alike; `skipOld` and `skipNew` from line to line.
 */
function shrink(
    old: ArrayLike<number>,
    from: number,
    lines: number,
    to: number,
    stride: number,
    skipOld: number,
    skipNew: number,
): Float32Array {
    const out = new Float32Array(lines * to);
    const ratio = from / to;
    for (let i = 0; i < to; i++) {
        const start = i * ratio;
        const end = Math.min(start + ratio, from);
        for (let j = Math.floor(start); j < end; j++) {
            const share = (Math.min(end, j + 1) - Math.max(start, j)) / (end - start);
            for (let line = 0; line < lines; line++) {
                out[line * skipNew + i * stride]! += share * old[line * skipOld + j * stride]!;
            }
        }
    }
    return out;
}
