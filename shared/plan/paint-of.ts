import type { Art } from '../art/art';
import { type BitmapArt, isBitmapArt } from '../art/bitmap';
import type { Painted } from '../art/compose/translucent';
import { painted } from '../art/painted';
import type { Raster } from '../art/raster/raster';
import { resample } from '../art/raster/resample';
import { bendTones } from '../art/raster/tone';
import { traceWithin } from '../art/raster/trace';
import { emptyRegion, type Region } from '../geometry/region';
import type { ArtSource } from '../recipe/recipe';
import { contentKey } from './content-key';
import type { Memo } from './memo';

/** What of an art burns, in its own page's coordinates (mm). Of a picture that is burnt as dots: wherever one may lie. */
export function paintOf(
    art: Art,
    source: ArtSource | undefined,
    picks: readonly string[],
    memo: Memo,
    leaves: readonly string[] = [],
): Painted {
    const threshold = source?.threshold?.value ?? 0.5;
    const dotted = ditheredArt(art, source) !== undefined;
    const key = contentKey(memo.keyOf(art), threshold, picks, leaves, source?.curve?.value, dotted);
    return memo.get('painted', key, (): Painted => {
        if (!isBitmapArt(art)) return painted(art, picks, threshold, leaves);
        if (picks.length + leaves.length > 0) return emptyRegion;
        const toned = tonesOf(art, source, memo);
        return dotted ? whereDotsMayLie(toned, art.pixel) : traceWithin(toned, threshold, art.pixel);
    });
}

/** The art if it is a picture that is burnt as dots. */
export function ditheredArt(art: Art, source: ArtSource | undefined): BitmapArt | undefined {
    return isBitmapArt(art) && source?.dither !== undefined ? art : undefined;
}

/** A picture's greys along its tone curve. */
export function tonesOf(art: BitmapArt, source: ArtSource | undefined, memo: Memo): Raster {
    const curve = source?.curve?.value;
    if (curve === undefined) return art.raster;
    return memo.get('tones', contentKey(memo.keyOf(art), curve), () => bendTones(art.raster, curve));
}

/** Cells along the longer side in which the outline of a picture's dots is told. */
const outlineCells = 400;

function whereDotsMayLie(raster: Raster, pixel: { width: number; height: number }): Region {
    const shrink = Math.max(1, Math.max(raster.columns, raster.rows) / outlineCells);
    if (shrink === 1) return traceWithin(raster, 0.5 / 255, pixel);
    const columns = Math.ceil(raster.columns / shrink);
    const rows = Math.ceil(raster.rows / shrink);
    const size = { width: (pixel.width * raster.columns) / columns, height: (pixel.height * raster.rows) / rows };
    return traceWithin(resample(raster, columns, rows), 0.5 / 255, size);
}
