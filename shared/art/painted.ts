import { subtract, union } from '../geometry/boolean';
import { emptyRegion, type Region } from '../geometry/region';
import type { Art, ArtPart } from './art';
import type { BitmapArt } from './bitmap';
import { traceWithin } from './raster/trace';

/**
 * What burns: parts are laid down in painter's order, one darker than the threshold burns, a
 * lighter one on top of it erases it. `picks` are `#id` and `.class`; only the parts that carry
 * one of them are laid down, or all if there are none. A bitmap has no parts to pick from.
 */
export function painted(art: Art, picks: readonly string[], threshold = 0.5): Region {
    if (isBitmap(art)) return picks.length === 0 ? traceWithin(art.raster, threshold, art.pixel) : emptyRegion;
    const parts = picks.length === 0 ? art.parts : art.parts.filter((part) => picks.some((pick) => carries(part, pick)));
    return layDown(parts, threshold, 0, parts.length, true).dark;
}

function isBitmap(art: Art): art is BitmapArt {
    return art.kind === 'bitmap' && 'raster' in art;
}

function carries({ ids, classes }: ArtPart, pick: string): boolean {
    return pick.startsWith('#') ? ids.includes(pick.slice(1)) : classes.includes(pick.replace(/^\./, ''));
}

/** What a run of parts makes dark and what it makes light, whatever lies below. */
interface Layer {
    readonly dark: Region;
    readonly light: Region;
}

/** Halving the run keeps the work near linear, where one part after the other would cost its square. */
function layDown(parts: readonly ArtPart[], threshold: number, from: number, to: number, lowest: boolean): Layer {
    if (to - from === 0) return { dark: emptyRegion, light: emptyRegion };
    if (to - from === 1) {
        const { darkness, region } = parts[from]!;
        return darkness > threshold ? { dark: region, light: emptyRegion } : { dark: emptyRegion, light: region };
    }
    const middle = (from + to) >> 1;
    const below = layDown(parts, threshold, from, middle, lowest);
    const above = layDown(parts, threshold, middle, to, false);
    return {
        dark: union([subtract(below.dark, above.light), above.dark]),
        // Below everything there is nothing to erase.
        light: lowest ? emptyRegion : union([subtract(below.light, above.dark), above.light]),
    };
}
