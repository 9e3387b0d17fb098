import { deflateSync } from 'node:zlib';
import { encode } from 'jpeg-js';

/** CRC-32 of a PNG chunk (W3C PNG, annex D). */
function crc32(bytes: Uint8Array): number {
    let crc = 0xffffffff;
    for (const byte of bytes) {
        crc ^= byte;
        for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
    }
    return (crc ^ 0xffffffff) >>> 0;
}

export function chunk(type: string, data: Uint8Array): Uint8Array {
    const out = new Uint8Array(12 + data.length);
    const view = new DataView(out.buffer);
    view.setUint32(0, data.length);
    out.set(new TextEncoder().encode(type), 4);
    out.set(data, 8);
    view.setUint32(8 + data.length, crc32(out.subarray(4, 8 + data.length)));
    return out;
}

export function join(...pieces: readonly Uint8Array[]): Uint8Array {
    const out = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const piece of pieces) {
        out.set(piece, at);
        at += piece.length;
    }
    return out;
}

/** A PNG with another chunk right after its header. */
export function withChunk(png: Uint8Array, type: string, data: Uint8Array): Uint8Array {
    return join(png.subarray(0, 33), chunk(type, data), png.subarray(33));
}

const signature = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/** A PNG from its header's values and its rows, each beginning with a filter byte, unpacked. */
export function pngOf(
    header: { columns: number; rows: number; depth: number; colour: number; interlace?: number },
    rows: Uint8Array,
    ...between: readonly Uint8Array[]
): Uint8Array {
    const ihdr = new Uint8Array(13);
    const view = new DataView(ihdr.buffer);
    view.setUint32(0, header.columns);
    view.setUint32(4, header.rows);
    ihdr.set([header.depth, header.colour, 0, 0, header.interlace ?? 0], 8);
    return join(signature, chunk('IHDR', ihdr), ...between, chunk('IDAT', deflateSync(rows)), chunk('IEND', new Uint8Array(0)));
}

/** A JPEG of greys, 0 black to 255 white, with a JFIF density. */
export function jpegOf(
    columns: number,
    rows: number,
    grey: (x: number, y: number) => number,
    density: { units: number; x: number; y: number },
): Uint8Array {
    const data = Buffer.alloc(columns * rows * 4);
    for (let i = 0; i < columns * rows; i++) {
        const value = grey(i % columns, Math.floor(i / columns));
        data.set([value, value, value, 255], 4 * i);
    }
    const bytes = new Uint8Array(encode({ width: columns, height: rows, data }, 95).data);
    // The encoder writes a JFIF header right after the start: FFD8 FFE0 length "JFIF\0" version units x y.
    bytes.set([density.units, density.x >> 8, density.x & 255, density.y >> 8, density.y & 255], 13);
    return bytes;
}

/** The JPEG with an Exif orientation put before everything else. */
export function oriented(jpeg: Uint8Array, orientation: number): Uint8Array {
    const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
    const exif = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
    return join(jpeg.subarray(0, 2), Uint8Array.of(0xff, 0xe1, 0, exif.length + 2, ...exif), jpeg.subarray(2));
}
