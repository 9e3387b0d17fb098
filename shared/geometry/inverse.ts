import { subtract, unite } from './boolean';
import { area, signedArea } from './measure';
import { grow } from './offset';
import { emptyRegion, type Region } from './region';

/** Art turned inside out: all of the boundary that the art leaves free. Art beyond the boundary counts for nothing. */
export function inverse(art: Region, boundary: Region): Region {
    return subtract(boundary, art);
}

/**
 * The boundary that follows the art at a distance in mm, as one sheet without holes. Empty if the
 * distance is negative or not finite.
 */
export function grownBoundary(art: Region, by: number): Region {
    if (!(by >= 0) || !Number.isFinite(by)) return emptyRegion;
    return withoutHoles(grow(withoutHoles(art), by));
}

/** The region with its holes filled, islands within holes included. */
export function withoutHoles(region: Region): Region {
    const outer = region.rings.filter((ring) => signedArea(ring) > 0);
    return outer.length === region.rings.length ? region : unite(outer);
}

/** How much of the art lies outside the boundary, in mm2. */
export function areaBeyond(art: Region, boundary: Region): number {
    return area(subtract(art, boundary));
}
