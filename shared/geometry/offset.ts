import { combine } from './engine';
import { type Join, Outline, walk, withoutRepeats } from './outline';
import { emptyRegion, type Region } from './region';
import { flatteningTolerance } from './shapes';

export type { Join } from './outline';

/**
 * The region grown by `delta` mm on all sides, or shrunk if it is negative. `miter` keeps sharp
 * corners up to four times the distance. A distance that is not finite leaves the region as it is.
 */
export function grow(region: Region, delta: number, join: Join = 'round', tolerance = flatteningTolerance): Region {
    if (region.rings.length === 0 || delta === 0 || !Number.isFinite(delta)) return region;
    const outline = new Outline(delta, join, miterLimitOfGrow, tolerance);
    const raw: Float64Array[] = [];
    for (const ring of region.rings) {
        const points = withoutRepeats(ring, true);
        if (points.length < 6) continue;
        walk(outline, points);
        raw.push(outline.take());
    }
    return raw.length === 0 ? emptyRegion : combine('union', 'positive', raw, []);
}

const miterLimitOfGrow = 4;
