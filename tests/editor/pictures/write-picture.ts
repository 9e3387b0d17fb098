import { statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { decode } from 'fast-png';

/** Of the library, which comes without types, what is used: pixels of each frame as RGBA, one after the other, and how long each stands (ms). */
interface Encoder {
    encode(frames: ArrayBuffer[], width: number, height: number, colours: number, delays?: number[]): ArrayBuffer;
}
const { encode } = createRequire(import.meta.url)('upng-js') as Encoder;

/** As many as a palette holds: text on plain ground needs no more, and the file is a third as long. */
const colours = 256;

export interface Frame {
    /** A picture of the screen, as the browser makes it. */
    readonly png: Uint8Array;
    /** How long it stands, ms. */
    readonly stands: number;
}

/**
 * Writes a picture, or what moves as an animated PNG (PNG specification, third edition).
 * @returns its length, bytes
 */
export function writePicture(file: string, frames: readonly Frame[]): number {
    const decoded = frames.map(({ png }) => decode(png));
    const { width, height } = decoded[0]!;
    const pixels = decoded.map((frame) => rgba(frame.data, frame.channels, width * height));
    const delays = frames.length > 1 ? frames.map(({ stands }) => stands) : undefined;
    writeFileSync(file, new Uint8Array(encode(pixels, width, height, colours, delays)));
    return statSync(file).size;
}

function rgba(data: ArrayLike<number>, channels: number, count: number): ArrayBuffer {
    const out = new Uint8Array(4 * count);
    for (let i = 0; i < count; i += 1) {
        for (let c = 0; c < 3; c += 1) out[4 * i + c] = data[channels * i + c]!;
        out[4 * i + 3] = 255;
    }
    return out.buffer;
}
