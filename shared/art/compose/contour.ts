import { emptyRegion, type Region, type Ring } from '../../geometry/region';
import { simplifyRing } from '../../geometry/simplify';

/** Points at equal distances in which something is known, row by row. */
export interface Grid {
    /** mm */
    readonly x: number;
    readonly y: number;
    readonly step: number;
    readonly columns: number;
    readonly rows: number;
}

/** Sides of a square between four points. */
const [top, right, bottom, left] = [0, 1, 2, 3];

/**
 * From which side to which an edge runs with the dark on its right hand, by which corners are dark:
 * 1 top left, 2 top right, 4 bottom right, 8 bottom left.
 */
const edges: readonly (readonly number[])[] = [
    [],
    [top, left],
    [right, top],
    [right, left],
    [bottom, right],
    [top, left, bottom, right],
    [bottom, top],
    [bottom, left],
    [left, bottom],
    [top, bottom],
    [right, top, left, bottom],
    [right, bottom],
    [left, right],
    [top, right],
    [left, top],
    [],
];

/** Where opposite corners are dark and so is the middle between them. */
const joined: ReadonlyMap<number, readonly number[]> = new Map([
    [5, [top, right, bottom, left]],
    [10, [left, top, right, bottom]],
]);

/** Of a step, how far what is left of a line may stray. */
const straying = 1 / 40;

/**
 * Where values on a grid pass a threshold, with straight lines between the points (marching
 * squares, without its ambiguity: W. E. Lorensen and H. E. Cline, "Marching cubes", 1987, in the
 * plane). What lies beyond the grid counts as light, so the outermost points should not matter.
 */
export function contour(values: ArrayLike<number>, grid: Grid, threshold: number): Region {
    const next = edgesOf(values, grid, threshold);
    const rings: Ring[] = [];
    for (const start of next.keys()) {
        const ring: number[] = [];
        for (let at: number | undefined = start; at !== undefined; ) {
            push(ring, at, values, grid, threshold);
            const following: number | undefined = next.get(at);
            next.delete(at);
            at = following === start ? undefined : following;
        }
        if (ring.length >= 6) rings.push(simplifyRing(Float64Array.from(ring), grid.step * straying));
    }
    return rings.length === 0 ? emptyRegion : { rings };
}

/** From each side of a square that is passed to the next one along the edge. */
function edgesOf(values: ArrayLike<number>, { columns, rows }: Grid, threshold: number): Map<number, number> {
    const isDark = (column: number, row: number): 0 | 1 =>
        column > 0 && row > 0 && column < columns - 1 && row < rows - 1 && values[row * columns + column]! > threshold ? 1 : 0;
    const next = new Map<number, number>();
    for (let row = 0; row + 1 < rows; row++) {
        for (let column = 0; column + 1 < columns; column++) {
            const above = isDark(column, row) + 2 * isDark(column + 1, row);
            const corners = above + 4 * isDark(column + 1, row + 1) + 8 * isDark(column, row + 1);
            if (corners === 0 || corners === 15) continue;
            const at = row * columns + column;
            const middle = values[at]! + values[at + 1]! + values[at + columns]! + values[at + columns + 1]!;
            const run = (middle > 4 * threshold && joined.get(corners)) || edges[corners]!;
            for (let i = 0; i < run.length; i += 2) next.set(side(at, run[i]!, columns), side(at, run[i + 1]!, columns));
        }
    }
    return next;
}

/** A number for the side of a square, the same from both squares beside it. */
function side(at: number, which: number, columns: number): number {
    switch (which) {
        case top:
            return 2 * at;
        case left:
            return 2 * at + 1;
        case bottom:
            return 2 * (at + columns);
        default:
            return 2 * (at + 1) + 1;
    }
}

function push(ring: number[], at: number, values: ArrayLike<number>, grid: Grid, threshold: number): void {
    const { x, y, step, columns } = grid;
    const from = at >> 1;
    const down = at % 2 === 1;
    const [a, b] = [values[from]!, values[from + (down ? columns : 1)]!];
    // Never at a point of the grid itself, where two lines could meet.
    const share = Math.max(0.001, Math.min(0.999, (threshold - a) / (b - a) || 0.5));
    const column = from % columns;
    const row = (from - column) / columns;
    ring.push(x + step * (column + (down ? 0 : share)), y + step * (row + (down ? share : 0)));
}
