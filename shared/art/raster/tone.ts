import type { Raster } from './raster';

/** A point of a tone curve: what darkness, 0 to 1, becomes what. */
export interface TonePoint {
    readonly from: number;
    readonly to: number;
}

/**
 * Bends a picture's tones along a smooth curve through the points, which never turns back where
 * they do not (F. N. Fritsch and R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J.
 * Numer. Anal. 17(2):238-246, 1980). Before the first point and after the last it is level.
 */
export function bendTones(raster: Raster, points: readonly TonePoint[]): Raster {
    const curve = toneCurve(points);
    const table = Uint8Array.from({ length: 256 }, (_, value) => Math.round(255 * Math.max(0, Math.min(1, curve(value / 255)))));
    return { ...raster, darkness: raster.darkness.map((value) => table[value]!) };
}

/** Darknesses nearer to each other than this are one: a slope between them would be without end. */
const alike = 1e-9;

/** The curve itself, darkness to darkness. Points that are not finite or repeat a `from` are left out; none at all changes nothing. */
export function toneCurve(points: readonly TonePoint[]): (darkness: number) => number {
    const sorted = points
        .filter(({ from, to }) => Number.isFinite(from) && Number.isFinite(to))
        .toSorted((a, b) => a.from - b.from)
        .filter(({ from }, i, all) => i === 0 || from - all[i - 1]!.from > alike);
    const [first] = sorted;
    const last = sorted.at(-1);
    if (first === undefined || last === undefined) return (darkness) => darkness;
    const slopes = tangents(sorted);
    return (darkness) => {
        if (darkness <= first.from) return first.to;
        if (darkness >= last.from) return last.to;
        const i = sorted.findIndex(({ from }) => from > darkness) - 1;
        const a = sorted[i]!;
        const b = sorted[i + 1]!;
        const width = b.from - a.from;
        const t = (darkness - a.from) / width;
        // Cubic Hermite basis.
        return (
            a.to * (1 + 2 * t) * (1 - t) ** 2 +
            slopes[i]! * width * t * (1 - t) ** 2 +
            b.to * t * t * (3 - 2 * t) +
            slopes[i + 1]! * width * t * t * (t - 1)
        );
    };
}

function tangents(points: readonly TonePoint[]): number[] {
    const secants = points.slice(1).map(({ from, to }, i) => (to - points[i]!.to) / (from - points[i]!.from));
    const slopes = points.map((_, i) => {
        const before = secants[i - 1] ?? secants[i] ?? 0;
        const after = secants[i] ?? before;
        return before * after <= 0 ? 0 : (before + after) / 2;
    });
    secants.forEach((secant, i) => {
        if (secant === 0) return;
        // Fritsch and Carlson's circle of radius 3: inside it the piece is monotone.
        const size = Math.hypot(slopes[i]! / secant, slopes[i + 1]! / secant);
        if (size <= 3) return;
        slopes[i]! *= 3 / size;
        slopes[i + 1]! *= 3 / size;
    });
    return slopes;
}
