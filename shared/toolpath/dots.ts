import type { Hatch } from './hatch';

/**
 * Dots on scan lines: square cells as wide as the pitch, row k of them about the line at
 * v = first + k·pitch, its first one from u = `left` on (u and v as a Hatch has them).
 */
export interface DotGrid {
    /** rad */
    readonly angle: number;
    /** mm, in both directions */
    readonly pitch: number;
    readonly first: number;
    readonly left: number;
    readonly columns: number;
    readonly rows: number;
    /** 1 for a dot that burns, row by row. */
    readonly dots: Uint8Array;
    /** As a Hatch has it: 1 if the dots are as fine as was asked for. */
    readonly every: number;
}

/** The stretches that burn; dots beside one another are burnt in one go. */
export function hatchOfDots({ angle, pitch, first, left, columns, rows, dots, every }: DotGrid): Hatch {
    const starts = new Uint32Array(rows + 1);
    const ends = new Float64Array(2 * countRuns(dots, columns, rows));
    let write = 0;
    let lit = 0;
    for (let row = 0; row < rows; row++) {
        for (let x = 0; x < columns; ) {
            const from = row * columns + x;
            if (dots[from] === 0) {
                x++;
                continue;
            }
            const begin = x;
            while (x < columns && dots[row * columns + x] === 1) x++;
            ends[write++] = left + begin * pitch;
            ends[write++] = left + x * pitch;
            lit += x - begin;
        }
        starts[row + 1] = write / 2;
    }
    return { angle, pitch, first, lines: rows, starts, ends, segments: write / 2, length: lit * pitch, every };
}

function countRuns(dots: Uint8Array, columns: number, rows: number): number {
    let runs = 0;
    for (let at = 0; at < columns * rows; at++) if (dots[at] === 1 && (at % columns === 0 || dots[at - 1] === 0)) runs++;
    return runs;
}
