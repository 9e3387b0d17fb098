import { decode } from 'jpeg-js';
import { darknessOfRgb, type Raster } from './raster';

/** Reads a JPEG's pixels as stored, whatever its orientation. Throws with a reason for what is broken or too large. */
export function readJpeg(bytes: Uint8Array): Raster {
    const options = { useTArray: true, formatAsRGBA: false, maxResolutionInMP: 64, maxMemoryUsageInMB: 1024 } as const;
    const { width, height, data } = decode(bytes, options);
    const darkness = new Uint8Array(width * height);
    for (let i = 0, at = 0; i < darkness.length; i++, at += 3) {
        darkness[i] = Math.round(darknessOfRgb(data[at]!, data[at + 1]!, data[at + 2]!));
    }
    return { columns: width, rows: height, darkness };
}
