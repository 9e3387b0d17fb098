import { encode } from 'fast-png';

/** Pixels: at 80 by 60 mm a pixel is two usual lines wide. */
const placeholderPixels = { columns: 480, rows: 360 };

/** A picture of our own to begin with, as the bytes of a PNG file: a sky that darkens upwards, a low sun, its way on the water. */
export function placeholderPicture(): Uint8Array {
    const { columns, rows } = placeholderPixels;
    const data = new Uint8Array(columns * rows);
    const horizon = 0.58 * rows;
    for (let y = 0; y < rows; y += 1) {
        for (let x = 0; x < columns; x += 1) {
            const grey = y < horizon ? skyAt(x / columns, y / horizon, columns / rows) : waterAt(x / columns, y - horizon);
            data[y * columns + x] = Math.max(0, Math.min(255, Math.round(grey)));
        }
    }
    return encode({ width: columns, height: rows, data, channels: 1, depth: 8 });
}

const sunAcross = 0.64;

/** Grey of the sky; across and down as parts of it. */
function skyAt(across: number, down: number, aspect: number): number {
    const away = Math.hypot((across - sunAcross) * aspect, (down - 0.7) * 0.58);
    return away < 0.11 ? 250 : 110 + 90 * down + 60 * Math.exp((0.11 - away) / 0.18);
}

/** Grey of the water; across as a part of it, rows below the horizon. */
function waterAt(across: number, below: number): number {
    const ripple = 22 * Math.sin(below * 0.55 + 3 * Math.sin(across * 21 + below * 0.02));
    const glade = 120 * Math.exp(-(((across - sunAcross) / (0.05 + 0.0008 * below)) ** 2));
    return 70 + ripple + glade * (0.6 + 0.4 * Math.sin(below * 1.3));
}
