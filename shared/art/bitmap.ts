import { farthest } from '../geometry/grid';
import { phrase } from '../recipe/phrase';
import type { Art, ArtPart } from './art';
import { millimetresPerPixel } from './frame/length';
import { type ArtWish, wishedSize } from './frame/wish';
import { Problems } from './problems';
import { type PictureHeader, readHeader } from './raster/header';
import { readJpeg } from './raster/jpeg';
import { orient } from './raster/orient';
import { readPng } from './raster/png';
import type { Raster } from './raster/raster';
import { traceWithin } from './raster/trace';

/** A picture made of pixels. Its one part is what burns at a darkness of half; `painted` traces other thresholds from the raster. */
export interface BitmapArt extends Art {
    readonly kind: 'bitmap';
    readonly raster: Raster;
    /** Size of a pixel in mm. */
    readonly pixel: { readonly width: number; readonly height: number };
}

export function isBitmapArt(art: Art): art is BitmapArt {
    return art.kind === 'bitmap' && 'raster' in art;
}

/** The most pixels that are decoded, and the most memory that file and pixels may take: with the program itself half a gigabyte. */
const mostPixels = 64_000_000;
const mostBytes = 300_000_000;

/** The file, and what of it makes up the pixels. */
const copiesOfFile = 2;

/** Reads a PNG or JPEG. Never throws: what cannot be read is among the problems. */
export function readBitmap(bytes: Uint8Array, wish: ArtWish = {}): BitmapArt {
    const problems = new Problems('');
    const header = readHeader(bytes);
    if (header === undefined) {
        problems.add('unreadable', 'file', phrase`This is neither a PNG nor a JPEG file, or it is cut off.`);
        return nothing(problems);
    }
    const pixels = header.columns * header.rows;
    if (!(pixels > 0)) {
        problems.add('empty', header.format, phrase`The picture has no pixels.`);
        return nothing(problems);
    }
    const room = Math.min(mostPixels, (mostBytes - copiesOfFile * bytes.length) / header.weight);
    if (pixels > room) {
        const most = Math.floor(Math.max(0, room) / 1e6);
        const size = `${header.columns} x ${header.rows}`;
        problems.add(
            'too-large',
            header.format,
            phrase`The picture is ${size} pixels large; of one of its kind at most ${most} million are read. Make it smaller: two pixels for each width of the beam are enough.`,
        );
        return nothing(problems);
    }
    try {
        const stored = header.format === 'png' ? readPng(bytes) : readJpeg(bytes);
        return artOf(orient(stored, header.orientation), header, wish, problems);
    } catch (error) {
        const reason = error instanceof Error ? error.message : String(error);
        problems.add('unreadable', header.format, phrase`The picture cannot be read (${reason}).`);
        return nothing(problems);
    }
}

function artOf(raster: Raster, header: PictureHeader, wish: ArtWish, problems: Problems): BitmapArt {
    const { density } = header;
    const lying = header.orientation >= 5;
    const across = (lying ? density?.y : density?.x) ?? 1 / millimetresPerPixel;
    const down = (lying ? density?.x : density?.y) ?? 1 / millimetresPerPixel;
    const page = wishedSize(raster.columns / across, raster.rows / down, wish);
    if (Math.max(page.width, page.height) > farthest) {
        problems.add(
            'too-large',
            header.format,
            phrase`The picture is larger than the ${farthest / 1000} m that are laid out; give the art a smaller width.`,
        );
        return nothing(problems);
    }
    if (density === undefined && wish.width === undefined && wish.height === undefined) {
        problems.add('unsized', header.format, phrase`The file does not say how large it is; 96 pixels are taken as an inch.`);
    }
    const pixel = { width: page.width / raster.columns, height: page.height / raster.rows };
    const part: ArtPart = {
        ids: [],
        classes: [],
        darkness: 1,
        opacity: 1,
        colour: '#000000',
        region: traceWithin(raster, 0.5, pixel),
        open: false,
    };
    const blank = part.region.rings.length === 0;
    if (blank) problems.add('empty', header.format, phrase`Nothing in the picture is darker than half.`);
    const parts = blank ? [] : [part];
    return { kind: 'bitmap', page, physical: density !== undefined, parts, problems: problems.all(), raster, pixel };
}

function nothing(problems: Problems): BitmapArt {
    return {
        kind: 'bitmap',
        page: { width: 0, height: 0 },
        physical: false,
        parts: [],
        problems: problems.all(),
        raster: { columns: 0, rows: 0, darkness: new Uint8Array(0) },
        pixel: { width: 0, height: 0 },
    };
}
