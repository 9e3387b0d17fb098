import { invert, type Matrix } from '../../geometry/transform';
import type { Colour } from '../style/colour';

/** Where a gradient runs, in its own units, and the map from those to mm on the page. */
export interface GradientShape {
    readonly matrix: Matrix;
    readonly spread: 'pad' | 'reflect' | 'repeat';
    /** From 0 at (x1, y1) to 1 at (x2, y2); or from a focal circle to a circle. */
    readonly line?: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
    readonly circle?: {
        readonly cx: number;
        readonly cy: number;
        readonly r: number;
        readonly fx: number;
        readonly fy: number;
        readonly fr: number;
    };
}

/** Paint that is not the same everywhere. */
export interface Shading {
    readonly shape: GradientShape;
    /** In the order of `at` (0 to 1), at least one; darkness of the paint itself, and its opacity. */
    readonly stops: readonly ShadingStop[];
}

export interface ShadingStop {
    readonly at: number;
    readonly darkness: number;
    readonly opacity: number;
    /** From which the darkness comes; absent where it comes from something else. */
    readonly colour?: Colour;
}

/**
 * Finds the place along a gradient that a point in mm has: 0 at its start, 1 at its end, beyond
 * both as it is. Of a point that several circles go through, the last one (SVG 2, 14.2.3.2).
 */
export function locatorOf({ matrix, line, circle }: GradientShape): (x: number, y: number) => number {
    const back = invert(matrix);
    if (back === undefined) return () => 0;
    const { a, b, c, d, e, f } = back;
    if (line !== undefined) {
        const [dx, dy] = [line.x2 - line.x1, line.y2 - line.y1];
        const square = dx * dx + dy * dy;
        return (x, y) => ((a * x + c * y + e - line.x1) * dx + (b * x + d * y + f - line.y1) * dy) / square;
    }
    const { cx, cy, r, fx, fy, fr } = circle!;
    const [dx, dy, dr] = [cx - fx, cy - fy, r - fr];
    // |p - t·d| = fr + t·dr, with the focal point inside the circle, so that the square's factor is negative.
    const factor = dx * dx + dy * dy - dr * dr;
    return (x, y) => {
        const px = a * x + c * y + e - fx;
        const py = b * x + d * y + f - fy;
        const half = px * dx + py * dy + fr * dr;
        const rest = px * px + py * py - fr * fr;
        return (half - Math.sqrt(Math.max(0, half * half - factor * rest))) / factor;
    };
}

/** How dark something of darkness `below` looks through the paint at a place along it; linear in `below`. */
export function mixAt({ shape, stops }: Shading, place: number, below: number): number {
    const t = spread(place, shape.spread);
    let after = 0;
    // Where several stops lie at 0, what is before it has the first one's colour, and what is behind it begins with the last one's.
    const isBefore = shape.spread === 'pad' && place < 0;
    while (!isBefore && after < stops.length && stops[after]!.at <= t) after++;
    if (after === 0) return mixed(stops[0]!.darkness, stops[0]!.opacity, below);
    const from = stops[after - 1]!;
    if (after === stops.length) return mixed(from.darkness, from.opacity, below);
    const to = stops[after]!;
    const share = (t - from.at) / (to.at - from.at);
    return mixed(
        from.darkness + (to.darkness - from.darkness) * share,
        from.opacity + (to.opacity - from.opacity) * share,
        below,
    );
}

/** The least and the greatest that `mixAt` gives anywhere along the paint. */
export function mixRange({ stops }: Shading, below: number): readonly [least: number, greatest: number] {
    let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    const meet = (darkness: number, opacity: number): void => {
        const value = mixed(darkness, opacity, below);
        least = Math.min(least, value);
        greatest = Math.max(greatest, value);
    };
    for (const [i, { darkness, opacity }] of stops.entries()) {
        meet(darkness, opacity);
        const next = stops[i + 1];
        if (next === undefined) continue;
        // Both run straight from stop to stop, so what is seen through them is a parabola: its vertex may go beyond the ends.
        const [byDarkness, byOpacity] = [next.darkness - darkness, next.opacity - opacity];
        const vertex = -(byDarkness * opacity + byOpacity * (darkness - below)) / (2 * byDarkness * byOpacity);
        if (vertex > 0 && vertex < 1) meet(darkness + byDarkness * vertex, opacity + byOpacity * vertex);
    }
    return [least, greatest];
}

function mixed(darkness: number, opacity: number, below: number): number {
    return darkness * opacity + below * (1 - opacity);
}

function spread(t: number, how: GradientShape['spread']): number {
    if (how === 'pad') return Math.min(1, Math.max(0, t));
    const turn = t - Math.floor(t);
    return how === 'reflect' && Math.floor(t) % 2 !== 0 ? 1 - turn : turn;
}
