import { EdgeIndex } from './edge-index';
import { islands } from './islands';
import { bounds, isEmpty, perimeter, signedArea } from './measure';
import type { NarrowPlace } from './narrow-place';
import { Narrowness } from './narrowness';
import { Nesting } from './nesting';
import { grow } from './offset';
import { emptyRegion, type Region, type Ring } from './region';
import { flatteningTolerance } from './shapes';
import { simplify } from './simplify';

/**
 * The parts of a region that are narrower than `limit` mm, narrowest first. Corners do not count
 * unless they are sharper than 30 degrees. Widths are good to 2 % of the limit. On outlines longer
 * than 75 000 limits the steps along them widen, so that the time stays bounded and short necks may be missed.
 */
export function narrow(region: Region, limit: number): NarrowPlace[] {
    return find(region, limit, 1);
}

/** The same for the gaps between and within the parts. */
export function narrowGaps(region: Region, limit: number): NarrowPlace[] {
    return find(region, limit, -1);
}

function find(region: Region, limit: number, side: 1 | -1): NarrowPlace[] {
    if (!(limit > 0) || !Number.isFinite(limit) || isEmpty(region)) return [];
    const light = simplify(region, Math.min(limit / 100, flatteningTolerance));
    const box = bounds(light);
    if (box === undefined) return [];
    // Nothing in the region is wider than the region; much larger discs would lose their digits.
    const widest = 2 * Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
    const narrowness = new Narrowness(new EdgeIndex(light.rings), Math.min(limit, widest), perimeter(light), side);
    for (let ring = 0; ring < light.rings.length; ring++) narrowness.walk(ring, signedArea(light.rings[ring]!));
    return narrowness.places().toSorted((a, b) => a.width - b.width);
}

/** The pieces of a region of which nothing is left when every edge gives way by half of `clearance` mm. */
export function vanishing(region: Region, clearance: number): Region {
    if (!(clearance > 0) || !Number.isFinite(clearance)) return emptyRegion;
    const nesting = new Nesting(region);
    const staying = new Set<Ring>();
    for (const ring of grow(region, -clearance / 2).rings) {
        const around = nesting.outerAround((ring[0]! + ring[2]!) / 2, (ring[1]! + ring[3]!) / 2);
        if (around >= 0) staying.add(region.rings[around]!);
    }
    return { rings: islands(region).flatMap((piece) => (staying.has(piece.rings[0]!) ? [] : piece.rings)) };
}
