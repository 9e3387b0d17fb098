import { intersect } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import { type Bounds, type Region, type Ring, tangledRegion } from '../../geometry/region';
import { invert, transform, transformRing } from '../../geometry/transform';
import { type Colour, darknessOf } from '../style/colour';
import type { GradientShape } from './gradient-shape';

/** A part of a shape that is filled with a gradient, in one colour. */
export interface Shade {
    readonly region: Region;
    readonly colour: Colour;
}

/** Steps of darkness in which a gradient is taken; half is one of their bounds. */
const steps = 16;
const mostShades = 256;
const sides = 180;

/**
 * A region filled with an opaque gradient, as shades in painter's order: they lie on one another, so
 * that no seam is left between them. Undefined for more shades than are worth it, or than the corners
 * left in `budget` allow. `colourAt` takes 0 to 1.
 */
export function shadesOf(
    region: Region,
    shape: GradientShape,
    colourAt: (t: number) => Colour,
    budget: { left: number },
): Shade[] | undefined {
    const back = invert(shape.matrix);
    const box = bounds(region);
    if (back === undefined || box === undefined) return undefined;
    const within = transformRing(corners(box), back);
    const reach = shape.line === undefined ? reachOfCircle(shape.circle!, within) : reachOfLine(shape.line, within);
    if (reach === undefined) return undefined;
    const { from, to, upTo } = reach;
    const at = (t: number): Colour => colourAt(spread(t, shape.spread));
    const bounds_ = changes(from, to, at);
    if (bounds_ === undefined) return undefined;
    const edges = [from, ...bounds_, to];
    const colours = edges.slice(1).map((end, i) => at((edges[i]! + end) / 2));
    budget.left -= colours.length * (sides + region.rings.reduce((sum, ring) => sum + ring.length / 2, 0));
    if (budget.left < 0) return undefined;
    const before = (t: number): Region => transform({ rings: [upTo(t)] }, shape.matrix);
    const shades: Shade[] = [];
    // From the far end: each shade covers what lies nearer than its far edge.
    for (let i = colours.length - 1; i >= 0; i--) {
        const part = i === colours.length - 1 ? region : intersect(region, before(edges[i + 1]!));
        if (part === tangledRegion) return undefined;
        if (part.rings.length > 0) shades.push({ region: part, colour: colours[i]! });
    }
    return shades;
}

interface Reach {
    readonly from: number;
    readonly to: number;
    /** What lies nearer than t, in the gradient's own units, as far as it matters. */
    readonly upTo: (t: number) => Ring;
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
    const [from, to] = [Math.min(...along), Math.max(...along)];
    const margin = 1e-3 * (to - from + Math.max(...across) - Math.min(...across));
    const [low, high] = [Math.min(...across) - margin, Math.max(...across) + margin];
    const place = (t: number, s: number): [number, number] => [x1 + t * dx - s * dy, y1 + t * dy + s * dx];
    const start = from - margin;
    if (!Number.isFinite(from + to)) return undefined;
    return {
        from,
        to,
        upTo: (t) => Float64Array.of(...place(start, low), ...place(t, low), ...place(t, high), ...place(start, high)),
    };
}

function reachOfCircle({ cx, cy, r, fx, fy, fr }: NonNullable<GradientShape['circle']>, within: Ring): Reach | undefined {
    const covers = (t: number): boolean => {
        const [x, y, radius] = [fx + t * (cx - fx), fy + t * (cy - fy), fr + t * (r - fr)];
        for (let i = 0; i < within.length; i += 2) if (Math.hypot(within[i]! - x, within[i + 1]! - y) > radius) return false;
        return true;
    };
    let to = 1;
    while (!covers(to)) {
        to *= 1.5;
        if (!(to < 1e4)) return undefined;
    }
    return {
        from: 0,
        to,
        upTo: (t) => {
            const [x, y, radius] = [fx + t * (cx - fx), fy + t * (cy - fy), fr + t * (r - fr)];
            const ring = new Float64Array(2 * sides);
            for (let i = 0; i < sides; i++) {
                ring[2 * i] = x + radius * Math.cos((2 * Math.PI * i) / sides);
                ring[2 * i + 1] = y + radius * Math.sin((2 * Math.PI * i) / sides);
            }
            return ring;
        },
    };
}

/** Where the colour passes from one step of darkness to another. */
function changes(from: number, to: number, at: (t: number) => Colour): number[] | undefined {
    const found: number[] = [];
    const least = 1e-5 * Math.max(1, to - from);
    const key = (t: number): number => Math.floor(darknessOf(at(t)) * steps - 1e-9);
    const search = (a: number, keyA: number, b: number, keyB: number): void => {
        if (keyA === keyB || found.length > mostShades) return;
        if (b - a < least) {
            found.push((a + b) / 2);
            return;
        }
        const middle = (a + b) / 2;
        const keyM = key(middle);
        search(a, keyA, middle, keyM);
        search(middle, keyM, b, keyB);
    };
    const samples = Math.min(2048, Math.ceil(128 * Math.max(1, to - from)));
    let [t, k] = [from, key(from)];
    for (let i = 1; i <= samples; i++) {
        const next = from + ((to - from) * i) / samples;
        const keyNext = key(next);
        search(t, k, next, keyNext);
        [t, k] = [next, keyNext];
    }
    return found.length > mostShades ? undefined : found;
}

function spread(t: number, how: GradientShape['spread']): number {
    if (how === 'pad') return Math.min(1, Math.max(0, t));
    const turn = t - Math.floor(t);
    return how === 'reflect' && Math.floor(t) % 2 !== 0 ? 1 - turn : turn;
}

function corners({ minX, minY, maxX, maxY }: Bounds): Ring {
    return Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);
}
