import type { Region } from '../geometry/region';

/** Square cells over a part of the plane; cell (c, r) has its middle at (x + (c + ½)·cell, y + (r + ½)·cell), mm. */
export interface Grid {
    readonly x: number;
    readonly y: number;
    readonly cell: number;
    readonly columns: number;
    readonly rows: number;
}

/** Grid around a region with a margin; undefined if the region is empty or not finite. The cell grows until at most `most` are needed. */
export function gridAround(region: Region, margin: number, cell: number, most: number): Grid | undefined {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const ring of region.rings) {
        for (let i = 0; i + 1 < ring.length; i += 2) {
            const x = ring[i]!;
            const y = ring[i + 1]!;
            if (!(Math.abs(x) < 1e9 && Math.abs(y) < 1e9)) return undefined;
            if (x < minX) minX = x;
            if (x > maxX) maxX = x;
            if (y < minY) minY = y;
            if (y > maxY) maxY = y;
        }
    }
    const width = maxX - minX + 2 * margin;
    const height = maxY - minY + 2 * margin;
    if (!(width > 0 && height > 0 && cell > 0 && most >= 1) || !Number.isFinite(width + height)) return undefined;
    const count = (size: number, of: number): number => Math.max(1, Math.ceil(size / of - 1e-9));
    let used = Math.max(cell, Math.sqrt((width * height) / most));
    while (count(width, used) * count(height, used) > most) used *= 1.01;
    return { x: minX - margin, y: minY - margin, cell: used, columns: count(width, used), rows: count(height, used) };
}

/**
 * How much of each cell a region covers, 0 to 1, exactly: each edge adds the signed area to its right,
 * cell by cell, and a running sum along the row does the rest. For normalised regions.
 */
export function coverage(region: Region, grid: Grid): Float32Array {
    const { columns, rows, cell } = grid;
    const out = new Float32Array(columns * rows);
    for (const ring of region.rings) {
        const size = ring.length - (ring.length % 2);
        if (size < 6) continue;
        let x0 = (ring[size - 2]! - grid.x) / cell;
        let y0 = (ring[size - 1]! - grid.y) / cell;
        for (let i = 0; i < size; i += 2) {
            const x1 = (ring[i]! - grid.x) / cell;
            const y1 = (ring[i + 1]! - grid.y) / cell;
            // The inside lies to the right of an edge that goes up in an outer ring.
            if (y0 < y1) addEdge(out, columns, rows, x0, y0, x1, y1, -1);
            else if (y0 > y1) addEdge(out, columns, rows, x1, y1, x0, y0, 1);
            x0 = x1;
            y0 = y1;
        }
    }
    for (let row = 0; row < rows; row++) {
        let sum = 0;
        for (let at = row * columns, end = at + columns; at < end; at++) {
            sum += out[at]!;
            out[at] = Math.min(1, Math.max(0, sum));
        }
    }
    return out;
}

/**
 * What an edge from (x0, y0) down to (x1, y1), in cells, adds to the sums of `coverage`: rows outside of `rows` are left
 * out, and what lies left of the first column counts there.
 */
export function addEdge(
    out: Float32Array,
    columns: number,
    rows: number,
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    sign: number,
): void {
    const slope = (x1 - x0) / (y1 - y0);
    const lastRow = Math.min(rows - 1, Math.ceil(y1) - 1);
    for (let row = Math.max(0, Math.floor(y0)); row <= lastRow; row++) {
        const top = Math.max(row, y0);
        const bottom = Math.min(row + 1, y1);
        const a = x0 + (top - y0) * slope;
        const b = x0 + (bottom - y0) * slope;
        addStretch(out, row * columns, columns, Math.min(a, b), Math.max(a, b), sign * (bottom - top));
    }
}

/**
 * The piece of an edge within one row, from column position `low` to `high` over a height. Written so that the
 * running sum at a column is the area to the right of the piece within that column.
 */
function addStretch(out: Float32Array, base: number, columns: number, low: number, high: number, height: number): void {
    const first = Math.max(0, Math.floor(low));
    if (first >= columns) return;
    if (high <= first + 1) {
        const share = height * (1 - Math.max(0, (low + high) / 2 - first));
        out[base + first]! += share;
        if (first + 1 < columns) out[base + first + 1]! += height - share;
        return;
    }
    const perColumn = height / (high - low);
    let previous = 0;
    for (let column = first; column < high && column < columns; column++) {
        const from = Math.max(low, column);
        const to = Math.min(high, column + 1);
        const share = perColumn * (from - low + (to - from) * (column + 1 - (from + to) / 2));
        out[base + column]! += share - previous;
        previous = share;
    }
    const end = Math.ceil(high);
    if (end < columns) out[base + end]! += height - previous;
}
