import { convertIndexedToRgb, type DecodedPng, decode } from 'fast-png';
import { Unzlib } from 'fflate';
import { pngChunks } from './header';
import { darknessOfRgb, type Raster } from './raster';

/** deflate packs at most 1032 bytes into one. */
const densest = 1032;
const harmless = 256_000_000;

/** Reads a PNG's pixels. Throws with a reason for what is broken, forged or not supported. */
export function readPng(bytes: Uint8Array): Raster {
    const png = decode(essentials(bytes));
    return { columns: png.width, rows: png.height, darkness: darknessesOf(png) };
}

/**
 * The file with nothing but what makes up its pixels: texts and colour profiles are packed too, and
 * could unpack to anything. The pixels themselves are measured beforehand if they might.
 */
function essentials(bytes: Uint8Array): Uint8Array {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const kept = [bytes.subarray(0, 8)];
    const packed: Uint8Array[] = [];
    for (const { type, start, length } of pngChunks(view)) {
        if (!/^(IHDR|PLTE|tRNS|IDAT)$/.test(type)) continue;
        kept.push(bytes.subarray(start - 8, start + length + 4));
        if (type === 'IDAT') packed.push(bytes.subarray(start, start + length));
    }
    const depth = view.getUint8(24);
    if (view.getUint8(28) !== 0 && depth < 8) throw new Error('interlaced with fewer than 8 bits a pixel');
    // Two bytes for each of four channels is the most a pixel takes; each row has a byte of its own, and interlacing more rows.
    const expected = view.getUint32(20) * (view.getUint32(16) * 8 + 16) + 1024;
    if (packed.reduce((sum, { length }) => sum + length, 0) * densest > harmless) measure(packed, expected);
    kept.push(Uint8Array.of(0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82));
    const out = new Uint8Array(kept.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const piece of kept) {
        out.set(piece, at);
        at += piece.length;
    }
    return out;
}

/** Unpacks without keeping, to stop at more than there are pixels for. */
function measure(packed: readonly Uint8Array[], expected: number): void {
    let size = 0;
    const unpack = new Unzlib((piece) => {
        size += piece.length;
        if (size > expected) throw new Error('more data than pixels');
    });
    // In small pieces, so that one of them cannot unpack to much.
    for (const chunk of packed) for (let at = 0; at < chunk.length; at += 65_536) unpack.push(chunk.subarray(at, at + 65_536));
}

function darknessesOf(png: DecodedPng): Uint8Array {
    const { width, height, palette } = png;
    const darkness = new Uint8Array(width * height);
    if (palette !== undefined && palette.length > 0 && png.channels === 1) {
        return fromSamples(convertIndexedToRgb(png), palette[0]!.length, 255, darkness, undefined);
    }
    const most = 2 ** png.depth - 1;
    const samples = png.depth < 8 ? unpackBits(png) : png.data;
    return fromSamples(samples, png.channels, most, darkness, png.transparency);
}

/** One sample a byte from rows of 1, 2 or 4 bits a sample, each row beginning with a byte of its own. */
function unpackBits({ width, height, depth, data }: DecodedPng): Uint8Array {
    const samples = new Uint8Array(width * height);
    const stride = Math.ceil((width * depth) / 8);
    const mask = 2 ** depth - 1;
    for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
            const bit = x * depth;
            const byte = data[y * stride + (bit >> 3)] ?? 0;
            samples[y * width + x] = (byte >> (8 - depth - (bit & 7))) & mask;
        }
    }
    return samples;
}

/** `clear` is the one grey or colour that a tRNS chunk makes see-through. */
function fromSamples(
    samples: ArrayLike<number>,
    channels: number,
    most: number,
    darkness: Uint8Array,
    clear: ArrayLike<number> | undefined,
): Uint8Array {
    const colours = channels >= 3 ? 3 : 1;
    const hasAlpha = channels === 2 || channels === 4;
    const unit = 255 / most;
    for (let i = 0, at = 0; i < darkness.length; i++, at += channels) {
        const red = samples[at]!;
        const green = colours === 3 ? samples[at + 1]! : red;
        const blue = colours === 3 ? samples[at + 2]! : red;
        if (clear !== undefined && red === clear[0] && (colours === 1 || (green === clear[1] && blue === clear[2]))) continue;
        const alpha = hasAlpha ? samples[at + channels - 1]! / most : 1;
        darkness[i] = Math.round(alpha * darknessOfRgb(red * unit, green * unit, blue * unit));
    }
    return darkness;
}
