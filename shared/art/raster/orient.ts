import type { Raster } from './raster';

/** Turns and mirrors a picture the way its Exif orientation (1 to 8) says it is to be seen. */
export function orient(raster: Raster, orientation: number): Raster {
    if (orientation <= 1 || orientation > 8) return raster;
    const { columns, rows, darkness } = raster;
    const lying = orientation >= 5;
    const out = { columns: lying ? rows : columns, rows: lying ? columns : rows, darkness: new Uint8Array(darkness.length) };
    // The stored row 0 is seen at the bottom (3, 4, 7, 8 for columns), and so on: Exif 2.3, table 6.
    const fromRight = [2, 3, 7, 8].includes(orientation);
    const fromBottom = [3, 4, 6, 7].includes(orientation);
    for (let y = 0; y < out.rows; y++) {
        for (let x = 0; x < out.columns; x++) {
            const across = lying ? y : x;
            const down = lying ? x : y;
            const sourceX = fromRight ? columns - 1 - across : across;
            const sourceY = fromBottom ? rows - 1 - down : down;
            out.darkness[y * out.columns + x] = darkness[sourceY * columns + sourceX]!;
        }
    }
    return out;
}
