import { intersect } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import { type Bounds, emptyRegion, type Region } from '../../geometry/region';
import { darkBands } from './bands';
import { contour, type Grid } from './contour';
import { darknessThrough, type Filter, gatherShadings } from './filter';
import { checked, Tangled } from './opaque';
import { pointwise } from './scan';
import type { Shading } from './shading';

/** mm between points: half of a fine beam. */
export const finestStep = 0.05;
/** Points across a small region; most points of one grid. */
const acrossSmall = 200;
const mostPoints = 1_000_000;

/**
 * What of a region looks darker than the threshold through a filter, on bare wood. Throws `Tangled`
 * where points have to be looked at and none are left in `budget`.
 */
export function darkWithin(region: Region, filter: Filter, threshold: number, budget: { points: number }): Region {
    const shadings = new Set<Shading>();
    gatherShadings(filter, shadings);
    const [shading, another] = shadings;
    if (shading === undefined) return darknessThrough(filter, 0, none) > threshold ? region : emptyRegion;
    const bands =
        another === undefined
            ? darkBands(region, shading, (place) => darknessThrough(filter, 0, () => place) > threshold)
            : undefined;
    return checked(bands ?? contourWithin(region, filter, threshold, budget));
}

const none = (): number => 0;

function contourWithin(region: Region, filter: Filter, threshold: number, budget: { points: number }): Region {
    const box = bounds(region);
    if (box === undefined) return emptyRegion;
    const grid = gridOver(box, Math.min(finestStep, Math.max(box.maxX - box.minX, box.maxY - box.minY) / acrossSmall));
    budget.points -= grid.columns * grid.rows;
    if (budget.points < 0) throw new Tangled();
    const through = pointwise(filter);
    const values = new Float32Array(grid.columns * grid.rows);
    for (let row = 0, at = 0; row < grid.rows; row++) {
        const y = grid.y + grid.step * row;
        for (let column = 0; column < grid.columns; column++) values[at++] = through(grid.x + grid.step * column, y, 0);
    }
    return intersect(region, contour(values, grid, threshold));
}

/** A grid over a box and two points beyond it on all sides, as fine as wanted or as the bound on its points allows. */
export function gridOver({ minX, minY, maxX, maxY }: Bounds, wanted: number): Grid {
    const step = Math.max(wanted, Math.sqrt(((maxX - minX) * (maxY - minY)) / mostPoints), 1e-4);
    const columns = Math.ceil((maxX - minX) / step) + 5;
    const rows = Math.ceil((maxY - minY) / step) + 5;
    return { x: minX - 2 * step, y: minY - 2 * step, step, columns, rows };
}
