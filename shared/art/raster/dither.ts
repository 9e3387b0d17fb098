import type { Raster } from './raster';

/** Which pixels burn: 1 or 0 for each, row by row. */
export type Dots = Uint8Array;

/** Where the error of a pixel goes: columns to the right, rows down, share. */
type Kernel = readonly (readonly [dx: number, dy: number, share: number])[];

/** R. W. Floyd and L. Steinberg, "An adaptive algorithm for spatial greyscale", Proc. SID 17(2):75-77, 1976. */
const floydSteinberg: Kernel = [
    [1, 0, 7 / 16],
    [-1, 1, 3 / 16],
    [0, 1, 5 / 16],
    [1, 1, 1 / 16],
];

/** J. F. Jarvis, C. N. Judice and W. H. Ninke, "A survey of techniques for the display of continuous tone pictures on bilevel displays", 1976. */
const jarvisJudiceNinke: Kernel = [
    [1, 0, 7 / 48],
    [2, 0, 5 / 48],
    [-2, 1, 3 / 48],
    [-1, 1, 5 / 48],
    [0, 1, 7 / 48],
    [1, 1, 5 / 48],
    [2, 1, 3 / 48],
    [-2, 2, 1 / 48],
    [-1, 2, 3 / 48],
    [0, 2, 5 / 48],
    [1, 2, 3 / 48],
    [2, 2, 1 / 48],
];

const kernels = { 'floyd-steinberg': floydSteinberg, 'jarvis-judice-ninke': jarvisJudiceNinke } as const;

/** B. E. Bayer, "An optimum method for two-level rendition of continuous-tone pictures", 1973: the index matrix of order 8. */
const bayer8 = indexMatrix(3);

export type Dither = 'threshold' | 'ordered' | keyof typeof kernels;

/** Turns grey into dots that burn or do not. */
export function dither(raster: Raster, how: Dither): Dots {
    switch (how) {
        case 'threshold':
            return raster.darkness.map((value) => (value > 127 ? 1 : 0));
        case 'ordered':
            return ordered(raster);
        default:
            return diffuse(raster, kernels[how]);
    }
}

/** From left to right in every row, as first published; errors that leave the picture are dropped. */
function diffuse({ columns, rows, darkness }: Raster, kernel: Kernel): Dots {
    const dots = new Uint8Array(columns * rows);
    // Errors of this row and of those that a kernel reaches, taken in turn: a whole picture of them would be large.
    const reach = 1 + Math.max(...kernel.map(([, dy]) => dy));
    const errors = Array.from({ length: reach }, () => new Float64Array(columns));
    for (let y = 0; y < rows; y++) {
        const own = errors[y % reach]!;
        for (let x = 0; x < columns; x++) {
            const at = y * columns + x;
            const value = darkness[at]! + own[x]!;
            const burn = value > 127;
            if (burn) dots[at] = 1;
            const error = value - (burn ? 255 : 0);
            for (const [dx, dy, share] of kernel) {
                if (x + dx >= 0 && x + dx < columns) errors[(y + dy) % reach]![x + dx]! += error * share;
            }
        }
        own.fill(0);
    }
    return dots;
}

function ordered({ columns, rows, darkness }: Raster): Dots {
    const dots = new Uint8Array(columns * rows);
    for (let y = 0; y < rows; y++) {
        for (let x = 0; x < columns; x++) {
            const level = (bayer8[(y % 8) * 8 + (x % 8)]! + 0.5) / 64;
            if (darkness[y * columns + x]! / 255 > level) dots[y * columns + x] = 1;
        }
    }
    return dots;
}

/** Bayer's matrix of 2^order rows, by his recursion: four copies of the smaller one times 4, plus 0 2 / 3 1. */
function indexMatrix(order: number): number[] {
    if (order === 0) return [0];
    const smaller = indexMatrix(order - 1);
    const half = 2 ** (order - 1);
    const size = 2 * half;
    return Array.from({ length: size * size }, (_, i) => {
        const x = i % size;
        const y = Math.floor(i / size);
        const quarter = [0, 2, 3, 1][(y >= half ? 2 : 0) + (x >= half ? 1 : 0)]!;
        return 4 * smaller[(y % half) * half + (x % half)]! + quarter;
    });
}
