import type { Region } from '../geometry/region';
import { coverage, type Grid, gridAround } from './coverage';
import { normalCumulative } from './distributions';
import { depthOf, type LawNumbers } from './dose';

/** The dose of an area pass over the plane, as a part of what a wide area gets: painted area convolved with the beam. */
export interface DoseField {
    readonly grid: Grid;
    readonly part: Float32Array;
    /** Standard deviation of the beam's profile (mm). */
    readonly sigma: number;
    /** The cells had to be made larger than asked for, to keep to the most that are allowed. */
    readonly coarse: boolean;
}

export interface FieldOptions {
    /** mm; a third of sigma if absent. */
    readonly cell?: number;
    /** Most cells (default 8 million, 32 MB). */
    readonly most?: number;
    /** Cells to use instead, such as those of another field. Closer to its edge than four sigmas, what lies beyond is missing. */
    readonly grid?: Grid;
}

/** How far (in sigmas) a beam reaches in the sums; beyond lies 6e-5 of its power. */
const REACH = 4;

/** Undefined if the region is empty or not finite, or sigma is none. */
export function doseField(region: Region, sigma: number, options: FieldOptions = {}): DoseField | undefined {
    if (!(sigma > 0 && sigma < 1e6)) return undefined;
    const cell = options.cell ?? sigma / 3;
    const grid = options.grid ?? gridAround(region, REACH * sigma, cell, options.most ?? 8_000_000);
    if (grid === undefined) return undefined;
    const part = coverage(region, grid);
    blur(part, grid, kernelOf(sigma / grid.cell));
    return { grid, part, sigma, coarse: grid.cell > cell * (1 + 1e-9) };
}

/** Depth (mm) in each cell after passes of a dose (J/mm2). */
export function depthField(field: DoseField, law: LawNumbers, dose: number, passes: number): Float32Array {
    return field.part.map((part) => depthOf(law, dose * part, passes));
}

/** Volume (mm3) that a depth field takes off. */
export function volumeOf(field: DoseField, depths: Float32Array): number {
    let sum = 0;
    for (const depth of depths) sum += depth;
    return sum * field.grid.cell ** 2;
}

/** The beam's share on cells 0, 1, 2 … away, for a sigma in cells: exact for cells evenly covered. */
export function kernelOf(sigma: number): Float64Array {
    const reach = Math.max(0, Math.ceil(REACH * sigma - 0.5));
    const kernel = Float64Array.from(
        { length: reach + 1 },
        (_, k) => normalCumulative((k + 0.5) / sigma) - normalCumulative((k - 0.5) / sigma),
    );
    const sum = kernel.reduce((total, share, k) => total + (k === 0 ? share : 2 * share), 0);
    return kernel.map((share) => share / sum);
}

/** Convolution along rows, then along columns, in place. Nothing is painted outside of the grid. */
function blur(values: Float32Array, { columns, rows }: Grid, kernel: Float64Array): void {
    const reach = kernel.length - 1;
    if (reach === 0) return;
    const line = new Float32Array(columns + 2 * reach);
    for (let row = 0; row < rows; row++) {
        const base = row * columns;
        line.set(values.subarray(base, base + columns), reach);
        for (let c = 0; c < columns; c++) {
            let sum = kernel[0]! * line[c + reach]!;
            for (let k = 1; k <= reach; k++) sum += kernel[k]! * (line[c + reach - k]! + line[c + reach + k]!);
            values[base + c] = sum;
        }
    }
    // Downwards a window of whole rows is kept, so that memory is walked along.
    const height = 2 * reach + 1;
    const window = Array.from({ length: height }, () => new Float32Array(columns));
    for (let row = 0; row < reach && row < rows; row++) window[row]!.set(values.subarray(row * columns, (row + 1) * columns));
    for (let row = 0; row < rows; row++) {
        const incoming = window[(row + reach) % height]!;
        if (row + reach < rows) incoming.set(values.subarray((row + reach) * columns, (row + reach + 1) * columns));
        else incoming.fill(0);
        const base = row * columns;
        const middle = window[row % height]!;
        for (let c = 0; c < columns; c++) values[base + c] = kernel[0]! * middle[c]!;
        for (let k = 1; k <= reach; k++) {
            const above = window[(row - k + height) % height]!;
            const below = window[(row + k) % height]!;
            const share = kernel[k]!;
            for (let c = 0; c < columns; c++) values[base + c]! += share * (above[c]! + below[c]!);
        }
    }
}
