import { intersect, unite } from '../../geometry/boolean';
import { bounds, cornersOf } from '../../geometry/measure';
import { emptyRegion, type Region, type Ring } from '../../geometry/region';
import { invert, transformRing } from '../../geometry/transform';
import type { GradientShape, Shading } from './shading';

/** A gradient that turns dark and light more often than this within a region is not worth single bands. */
const mostChanges = 256;
const sides = 180;
/** Corners of a polygon lie this much further out than a circle of the same area. */
const equalArea = Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides));

/**
 * What of a region is dark, where that hangs on the place along one gradient alone. Circles are
 * taken as polygons of 180 sides and the same area. Undefined where it has too many bands.
 */
export function darkBands(region: Region, { shape, stops }: Shading, isDark: (place: number) => boolean): Region | undefined {
    const back = invert(shape.matrix);
    const box = bounds(region);
    if (back === undefined || box === undefined) return undefined;
    const within = transformRing(cornersOf(box), back);
    const reach = shape.line === undefined ? reachOfCircle(shape.circle!, within) : reachOfLine(shape.line, within);
    if (reach === undefined) return undefined;
    const { from, to, between } = reach;
    const edges = changes(
        from,
        to,
        stops.map(({ at }) => at),
        isDark,
    );
    if (edges === undefined) return undefined;
    const ends = [from, ...edges, to];
    const rings: Ring[] = [];
    for (let i = 0; i + 1 < ends.length; i++) {
        if (!isDark((ends[i]! + ends[i + 1]!) / 2)) continue;
        if (edges.length === 0) return region;
        rings.push(...between(ends[i]!, ends[i + 1]!).map((ring) => transformRing(ring, shape.matrix)));
    }
    return rings.length === 0 ? emptyRegion : intersect(region, unite(rings, 'evenodd'));
}

interface Reach {
    readonly from: number;
    readonly to: number;
    /** The rings between two places, in the gradient's own units, as far as it matters. */
    readonly between: (a: number, b: number) => Ring[];
}

function reachOfLine({ x1, y1, x2, y2 }: NonNullable<GradientShape['line']>, within: Ring): Reach | undefined {
    const [dx, dy] = [x2 - x1, y2 - y1];
    const square = dx * dx + dy * dy;
    const along: number[] = [];
    const across: number[] = [];
    for (let i = 0; i < within.length; i += 2) {
        const [x, y] = [within[i]! - x1, within[i + 1]! - y1];
        along.push((x * dx + y * dy) / square);
        across.push((y * dx - x * dy) / square);
    }
    const margin = 1e-3 * (Math.max(...along) - Math.min(...along) + Math.max(...across) - Math.min(...across));
    const [from, to] = [Math.min(...along) - margin, Math.max(...along) + margin];
    const [low, high] = [Math.min(...across) - margin, Math.max(...across) + margin];
    if (!Number.isFinite(from + to)) return undefined;
    const place = (t: number, s: number): [number, number] => [x1 + t * dx - s * dy, y1 + t * dy + s * dx];
    return {
        from,
        to,
        between: (a, b) => [Float64Array.of(...place(a, low), ...place(b, low), ...place(b, high), ...place(a, high))],
    };
}

function reachOfCircle({ cx, cy, r, fx, fy, fr }: NonNullable<GradientShape['circle']>, within: Ring): Reach | undefined {
    const at = (t: number) => ({ x: fx + t * (cx - fx), y: fy + t * (cy - fy), radius: fr + t * (r - fr) });
    const covers = (t: number): boolean => {
        const { x, y, radius } = at(t);
        for (let i = 0; i < within.length; i += 2) if (Math.hypot(within[i]! - x, within[i + 1]! - y) > radius) return false;
        return true;
    };
    let to = 1;
    while (!covers(to)) {
        to *= 1.5;
        if (!(to < 1e4)) return undefined;
    }
    const ringAt = (t: number): Ring => {
        const { x, y, radius } = at(t);
        const ring = new Float64Array(2 * sides);
        for (let i = 0; i < sides; i++) {
            ring[2 * i] = x + equalArea * radius * Math.cos((2 * Math.PI * i) / sides);
            ring[2 * i + 1] = y + equalArea * radius * Math.sin((2 * Math.PI * i) / sides);
        }
        return ring;
    };
    return { from: 0, to, between: (a, b) => (a <= 0 ? [ringAt(b)] : [ringAt(b), ringAt(a)]) };
}

/** Where it passes from dark to light or back, in order; looked for between the stops of every turn, too. */
function changes(from: number, to: number, stops: readonly number[], isDark: (t: number) => boolean): number[] | undefined {
    const found: number[] = [];
    const least = 1e-6 * Math.max(1, to - from);
    const search = (a: number, darkA: boolean, b: number, darkB: boolean): void => {
        if (darkA === darkB || found.length > mostChanges) return;
        if (b - a < least) {
            found.push((a + b) / 2);
            return;
        }
        const middle = (a + b) / 2;
        const dark = isDark(middle);
        search(a, darkA, middle, dark);
        search(middle, dark, b, darkB);
    };
    const samples = Math.min(2048, Math.ceil(128 * Math.max(1, to - from)));
    const places = Array.from({ length: samples }, (_, i) => from + ((to - from) * (i + 1)) / samples);
    if (to - from < mostChanges) {
        for (let turn = Math.floor(from); turn < to; turn++) {
            // The other way round as well, for gradients that are reflected.
            for (const at of stops)
                places.push(turn + at - least, turn + at + least, turn + 1 - at - least, turn + 1 - at + least);
        }
        places.sort((a, b) => a - b);
    }
    let [t, dark] = [from, isDark(from)];
    for (const next of places) {
        if (next <= t || next > to) continue;
        const darkNext = isDark(next);
        search(t, dark, next, darkNext);
        [t, dark] = [next, darkNext];
    }
    return found.length > mostChanges ? undefined : found;
}
