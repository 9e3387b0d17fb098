import { boundsOfRings, signedArea, windingOf } from './measure';
import type { Bounds, Region, Ring } from './region';

/** The connected pieces of a region: each outer ring with the holes in it, in the order of their outer rings. */
export function islands(region: Region): Region[] {
    const outers: { ring: Ring; bounds: Bounds; area: number; holes: Ring[] }[] = [];
    const holes: Ring[] = [];
    for (const ring of region.rings) {
        const area = signedArea(ring);
        if (area > 0) outers.push({ ring, bounds: boundsOfRings([ring])!, area, holes: [] });
        else if (area < 0) holes.push(ring);
    }
    const bySize = outers.toSorted((a, b) => a.area - b.area);
    for (const hole of holes) {
        const box = boundsOfRings([hole])!;
        const owner = bySize.find(
            ({ ring, bounds }) =>
                bounds.minX <= box.minX &&
                bounds.maxX >= box.maxX &&
                bounds.minY <= box.minY &&
                bounds.maxY >= box.maxY &&
                ringInside(hole, ring),
        );
        owner?.holes.push(hole);
    }
    return outers.map(({ ring, holes }) => ({ rings: [ring, ...holes] }));
}

/** Whether one ring lies inside another, the two not crossing; decided by a point of the inner one that is not on the outer. */
function ringInside(inner: Ring, outer: Ring): boolean {
    // The middle of an edge is less often a shared point than a corner is.
    return windingOf(outer, (inner[0]! + inner[2]!) / 2, (inner[1]! + inner[3]!) / 2) !== 0;
}
