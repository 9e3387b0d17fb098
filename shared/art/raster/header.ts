/** What a picture file says of itself before its pixels: read first, so that a forged size costs nothing. */
export interface PictureHeader {
    readonly format: 'png' | 'jpeg';
    readonly columns: number;
    readonly rows: number;
    /** Pixels a millimetre across and down, if the file says so. */
    readonly density: { readonly x: number; readonly y: number } | undefined;
    /** Exif orientation, 1 (as stored) to 8. */
    readonly orientation: number;
    /** Bytes of memory that each pixel takes while the picture is decoded and traced, about. */
    readonly weight: number;
}

/** The header of a PNG or JPEG file; undefined if it is neither, or ends before its size. */
export function readHeader(bytes: Uint8Array): PictureHeader | undefined {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    return pngHeader(view) ?? jpegHeader(view);
}

export interface Chunk {
    readonly type: string;
    /** Where its data begin. */
    readonly start: number;
    readonly length: number;
}

/** The chunks of a PNG file up to IEND or its end (W3C PNG, 5.3); one that is cut off is left out. */
export function* pngChunks(view: DataView): Generator<Chunk> {
    for (let at = 8; at + 12 <= view.byteLength; ) {
        const length = view.getUint32(at);
        const type = String.fromCharCode(...[4, 5, 6, 7].map((i) => view.getUint8(at + i)));
        if (at + 12 + length > view.byteLength) return;
        yield { type, start: at + 8, length };
        if (type === 'IEND') return;
        at += 12 + length;
    }
}

function pngHeader(view: DataView): PictureHeader | undefined {
    if (view.byteLength < 33 || view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a) return undefined;
    if (view.getUint32(12) !== 0x49484452) return undefined;
    let density: PictureHeader['density'];
    for (const { type, start, length } of pngChunks(view)) {
        if (type === 'IDAT') break;
        // pHYs: pixels per unit, across and down; unit 1 is the metre, 0 says only their ratio.
        if (type !== 'pHYs' || length !== 9 || view.getUint8(start + 8) !== 1) continue;
        density = plausible(view.getUint32(start) / 1000, view.getUint32(start + 4) / 1000);
    }
    const weight = weightOfPng(view.getUint8(24), view.getUint8(25));
    return { format: 'png', columns: view.getUint32(16), rows: view.getUint32(20), density, orientation: 1, weight };
}

function jpegHeader(view: DataView): PictureHeader | undefined {
    if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return undefined;
    let density: PictureHeader['density'];
    let orientation = 1;
    for (let at = 2; at + 4 <= view.byteLength; ) {
        const marker = view.getUint16(at);
        if (marker === 0xffff) {
            at++;
            continue;
        }
        if (marker < 0xff01) return undefined;
        const length = view.getUint16(at + 2);
        const start = at + 4;
        const end = at + 2 + length;
        if (length < 2 || end > view.byteLength) return undefined;
        if (marker === 0xffe0) density ??= jfifDensity(view, start, end);
        else if (marker === 0xffe1) orientation = exifOrientation(view, start, end) ?? orientation;
        else if (isFrame(marker)) {
            if (end - start < 6) return undefined;
            const size = { columns: view.getUint16(start + 3), rows: view.getUint16(start + 1) };
            return { format: 'jpeg', ...size, density, orientation, weight: weightOfJpeg(view, start, end) };
        }
        at = end;
    }
    return undefined;
}

/** Darkness, what has been walked along, a copy where the picture is turned, and what waits to be collected; measured on whole checks. */
const tracing = 5;

/** Rows as they are unpacked, joined, and as samples, all at once; colours of a palette are looked up once more (W3C PNG, 11.2.2). */
function weightOfPng(depth: number, colourType: number): number {
    const channels = [1, 0, 3, 1, 2, 0, 4][colourType] ?? 4;
    return 3 * channels * Math.max(1, depth / 8) + (colourType === 3 ? 4 : 0) + tracing;
}

/** Bytes of a block of 64 coefficients (256) with what the engine keeps beside such an array: an estimate. */
const jpegBlock = 470;

/** The decoder keeps all blocks, then all samples, then all pixels. Components and how they are thinned: ITU-T T.81, B.2.2. */
function weightOfJpeg(view: DataView, start: number, end: number): number {
    const count = view.getUint8(start + 5);
    const factors: (readonly [across: number, down: number])[] = [];
    for (let i = 0, at = start + 7; i < count && at < end; i++, at += 3) {
        factors.push([view.getUint8(at) >> 4, view.getUint8(at) & 15]);
    }
    const most = Math.max(1, ...factors.map(([across]) => across)) * Math.max(1, ...factors.map(([, down]) => down));
    const samples = factors.reduce((sum, [across, down]) => sum + (across * down) / most, 0);
    return (samples * jpegBlock) / 64 + samples + 2 * count + tracing;
}

/** Start of frame, of any coding (ITU-T T.81, table B.1). */
function isFrame(marker: number): boolean {
    return marker >= 0xffc0 && marker <= 0xffcf && marker !== 0xffc4 && marker !== 0xffc8 && marker !== 0xffcc;
}

/** JFIF 1.02, APP0: units 1 dots an inch, 2 dots a centimetre. */
function jfifDensity(view: DataView, start: number, end: number): PictureHeader['density'] {
    if (end - start < 12 || view.getUint32(start) !== 0x4a464946) return undefined;
    const units = view.getUint8(start + 7);
    const millimetres = units === 1 ? 25.4 : units === 2 ? 10 : undefined;
    if (millimetres === undefined) return undefined;
    return plausible(view.getUint16(start + 8) / millimetres, view.getUint16(start + 10) / millimetres);
}

/** Exif 2.3: tag 0x0112 of the first directory of the TIFF structure after "Exif". */
function exifOrientation(view: DataView, start: number, end: number): number | undefined {
    const tiff = start + 6;
    if (end - tiff < 14 || view.getUint32(start) !== 0x45786966) return undefined;
    const little = view.getUint16(tiff) === 0x4949;
    const directory = tiff + view.getUint32(tiff + 4, little);
    if (directory + 2 > end) return undefined;
    const count = view.getUint16(directory, little);
    for (let i = 0; i < count && directory + 14 + 12 * i <= end; i++) {
        const entry = directory + 2 + 12 * i;
        if (view.getUint16(entry, little) !== 0x0112) continue;
        const value = view.getUint16(entry + 8, little);
        return value >= 1 && value <= 8 ? value : undefined;
    }
    return undefined;
}

function plausible(x: number, y: number): PictureHeader['density'] {
    return x > 0 && y > 0 ? { x, y } : undefined;
}
