import { combine } from './engine';
import { type Join, Outline, withoutRepeats } from './outline';
import { emptyRegion, type Region } from './region';
import { flatteningTolerance } from './shapes';
import { simplify } from './simplify';

export type { Join } from './outline';

/**
 * The region grown by `delta` mm on all sides, or shrunk if it is negative. `miter` keeps sharp
 * corners up to four times the distance. A distance that is not finite leaves the region as it is.
 */
export function grow(region: Region, delta: number, join: Join = 'round', tolerance = flatteningTolerance): Region {
    if (region.rings.length === 0 || delta === 0 || !Number.isFinite(delta)) return region;
    // One half of the tolerance for what stays of the region's own points, one for the new arcs.
    const outline = new Outline(delta, join, miterLimitOfGrow, tolerance / 2);
    const raw: Float64Array[] = [];
    for (const ring of simplify(region, tolerance / 2).rings) {
        const points = withoutRepeats(ring, true);
        if (points.length < 6) continue;
        outline.side(points, true);
        raw.push(outline.take());
    }
    return raw.length === 0 ? emptyRegion : combine('union', 'positive', raw, []);
}

const miterLimitOfGrow = 4;
