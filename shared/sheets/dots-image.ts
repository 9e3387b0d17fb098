import { encode } from 'fast-png';
import { toBase64 } from '../quantity/base64';
import type { DotGrid } from '../toolpath/dots';

/** A PNG file of dots, one pixel each: black where one burns, see-through elsewhere. */
export function dotsPng({ columns, rows, dots }: DotGrid): Uint8Array {
    const stride = Math.ceil(columns / 8);
    const data = new Uint8Array(stride * rows);
    for (let y = 0; y < rows; y++) {
        for (let x = 0; x < columns; x++) {
            if (dots[y * columns + x] === 1) data[y * stride + (x >> 3)]! |= 0x80 >> (x & 7);
        }
    }
    const palette = [
        [0, 0, 0, 0],
        [0, 0, 0, 255],
    ];
    return encode({ width: columns, height: rows, depth: 1, channels: 1, data, palette });
}

/** The dots as an SVG image in real size, where they lie on the blank. */
export function dotsImage(grid: DotGrid, id: string): string {
    const { angle, pitch, first, left, columns, rows } = grid;
    const place = `x="${num(left)}" y="${num(first - pitch / 2)}" width="${num(columns * pitch)}" height="${num(rows * pitch)}"`;
    const turn = angle === 0 ? '' : ` transform="rotate(${num((angle * 180) / Math.PI)})"`;
    const data = toBase64(dotsPng(grid));
    return `<image id="${id}" ${place}${turn} preserveAspectRatio="none" style="image-rendering: pixelated" href="data:image/png;base64,${data}"/>`;
}

function num(value: number): string {
    return String(Math.round(value * 1e4) / 1e4);
}
