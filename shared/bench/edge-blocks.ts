import type { Grid } from '../burn/coverage';
import type { Bounds, Region } from '../geometry/region';

/** A grid divided into square blocks of cells, with those marked that an edge comes near. */
export interface EdgeBlocks {
    /** Columns and rows are whole blocks. */
    readonly grid: Grid;
    /** Cells along a block's side. */
    readonly side: number;
    readonly across: number;
    readonly down: number;
    /** 1 where an edge may come as near as `pad`, row by row. */
    readonly near: Uint8Array;
    /** How many of them. */
    readonly count: number;
}

/** More blocks than this are a figure in the wrong unit. */
const mostBlocks = 16_000_000;

/** Blocks over a box; undefined when they would be too many. Edges to the left of the box mark the first column. */
export function edgeBlocks(
    box: Bounds,
    cell: number,
    side: number,
    regions: readonly Region[],
    pad: number,
): EdgeBlocks | undefined {
    const size = side * cell;
    const across = Math.max(1, Math.ceil((box.maxX - box.minX) / size));
    const down = Math.max(1, Math.ceil((box.maxY - box.minY) / size));
    if (!(across * down <= mostBlocks)) return undefined;
    const near = new Uint8Array(across * down);
    const clamp = (value: number, end: number): number => Math.max(0, Math.min(end - 1, Math.floor(value)));
    const mark = (ax: number, ay: number, bx: number, by: number): void => {
        const left = (Math.min(ax, bx) - pad - box.minX) / size;
        const right = (Math.max(ax, bx) + pad - box.minX) / size;
        const top = (Math.min(ay, by) - pad - box.minY) / size;
        const bottom = (Math.max(ay, by) + pad - box.minY) / size;
        if (left >= across || bottom < 0 || top >= down) return;
        const lastColumn = clamp(right, across);
        const lastRow = clamp(bottom, down);
        for (let row = clamp(top, down); row <= lastRow; row++) {
            near.fill(1, row * across + clamp(left, across), row * across + lastColumn + 1);
        }
    };
    for (const ring of regions.flatMap((region) => region.rings)) {
        let x = ring[ring.length - 2]!;
        let y = ring[ring.length - 1]!;
        for (let i = 0; i + 1 < ring.length; i += 2) {
            const toX = ring[i]!;
            const toY = ring[i + 1]!;
            // A long slanting edge is taken in stretches, or its box would cover everything.
            const parts = Math.max(1, Math.min(10_000, Math.ceil(Math.hypot(toX - x, toY - y) / size)));
            for (let part = 0; part < parts; part++) {
                const from = part / parts;
                const to = (part + 1) / parts;
                mark(x + (toX - x) * from, y + (toY - y) * from, x + (toX - x) * to, y + (toY - y) * to);
            }
            x = toX;
            y = toY;
        }
    }
    const grid = { x: box.minX, y: box.minY, cell, columns: across * side, rows: down * side };
    return { grid, side, across, down, near, count: near.reduce((sum, one) => sum + one, 0) };
}
