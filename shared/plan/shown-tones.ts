import type { Raster } from '../art/raster/raster';
import { resample } from '../art/raster/resample';
import { traceWithin } from '../art/raster/trace';
import type { Region } from '../geometry/region';
import { rotate, translate } from '../geometry/transform';
import type { DotGrid } from '../toolpath/dots';

/** Cells in which greys are shown, and how many greys. */
const shownCells = 60_000;
const levels = 10;

/**
 * How closely dots lie, to look at from a step away: nested regions on the blank, the k-th where at
 * least k - 0.5 of `levels` parts of the wood are to be burnt.
 */
export function shownTones(greys: Raster, { angle, pitch, first, left, columns, rows }: DotGrid): Region[] {
    const cell = Math.max(1, Math.sqrt((columns * rows) / shownCells));
    const shown = cell === 1 ? greys : resample(greys, Math.ceil(columns / cell), Math.ceil(rows / cell));
    const size = { width: (columns * pitch) / shown.columns, height: (rows * pitch) / shown.rows };
    return Array.from({ length: levels }, (_, k) => {
        const traced = traceWithin(shown, (k + 0.5) / levels, size);
        return rotate(translate(traced, left, first - pitch / 2), angle);
    });
}
