import { unite } from './boolean';
import { combine } from './engine';
import { ringLength, signedArea } from './measure';
import { type Join, Outline, withoutRepeats } from './outline';
import { emptyRegion, type Region, type Ring } from './region';
import { flatteningTolerance, usableTolerance } from './shapes';
import { simplifyRing } from './simplify';

export type { Join } from './outline';

/**
 * The region grown by `delta` mm on all sides, or shrunk if it is negative. `miter` keeps sharp
 * corners up to four times the distance. A distance that is not finite leaves the region as it is.
 */
export function grow(region: Region, delta: number, join: Join = 'round', tolerance = flatteningTolerance): Region {
    if (region.rings.length === 0 || delta === 0 || !Number.isFinite(delta)) return region;
    // One half of the tolerance for what stays of the region's own points, one for the new arcs.
    const half = usableTolerance(tolerance) / 2;
    const outline = new Outline(delta, join, miterLimitOfGrow, half);
    const raw: Float64Array[] = [];
    for (const ring of lighter(region, half)) {
        const points = withoutRepeats(ring, true);
        if (points.length < 6) continue;
        outline.side(points, true);
        raw.push(outline.take());
    }
    return raw.length === 0 ? emptyRegion : combine('union', 'positive', raw, []);
}

/** The region's rings with fewer points. What is thinner than the tolerance could be lost that way, so it is left alone. */
function lighter(region: Region, tolerance: number): readonly Ring[] {
    const rings = region.rings.map((ring) => {
        const thin = Math.abs(signedArea(ring)) < tolerance * ringLength(ring);
        return thin ? ring : simplifyRing(ring, tolerance);
    });
    // Edges that moved may have met.
    return rings.some((ring, i) => ring !== region.rings[i]) ? unite(rings).rings : rings;
}

const miterLimitOfGrow = 4;
