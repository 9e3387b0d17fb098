import { emptyRegion } from '../geometry/region';
import type { Art, ArtPart } from './art';
import { isBitmapArt } from './bitmap';
import { darkAt, type Painted } from './compose/translucent';
import { traceWithin } from './raster/trace';

/**
 * What burns: parts are laid down in painter's order, one darker than the threshold burns, a
 * lighter one on top of it erases it, and what shows through counts as dark as it looks. `picks`
 * are `#id` and `.class`; only the parts that carry one of them are laid down, or all if there are
 * none; `leaves` are taken out of these. A bitmap has no parts to pick from. Parts that cross one another too often give
 * `tangledRegion`.
 */
export function painted(art: Art, picks: readonly string[], threshold = 0.5, leaves: readonly string[] = []): Painted {
    if (isBitmapArt(art)) return picks.length + leaves.length === 0 ? traceWithin(art.raster, threshold, art.pixel) : emptyRegion;
    const parts = picks.length === 0 ? art.parts : art.parts.filter((part) => picks.some((pick) => carries(part, pick)));
    return darkAt(leaves.length === 0 ? parts : parts.filter((part) => !leaves.some((pick) => carries(part, pick))), threshold);
}

function carries({ ids, classes }: ArtPart, pick: string): boolean {
    return pick.startsWith('#') ? ids.includes(pick.slice(1)) : classes.includes(pick.replace(/^\./, ''));
}
