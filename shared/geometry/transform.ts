import type { Region, Ring } from './region';
import { reversed } from './reverse';

/** An affine map in SVG's order: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export interface Matrix {
    readonly a: number;
    readonly b: number;
    readonly c: number;
    readonly d: number;
    readonly e: number;
    readonly f: number;
}

export const identity: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First `inner`, then `outer`: the order in which SVG nests transforms. */
export function multiply(outer: Matrix, inner: Matrix): Matrix {
    return {
        a: outer.a * inner.a + outer.c * inner.b,
        b: outer.b * inner.a + outer.d * inner.b,
        c: outer.a * inner.c + outer.c * inner.d,
        d: outer.b * inner.c + outer.d * inner.d,
        e: outer.a * inner.e + outer.c * inner.f + outer.e,
        f: outer.b * inner.e + outer.d * inner.f + outer.f,
    };
}

export function determinant(matrix: Matrix): number {
    return matrix.a * matrix.d - matrix.b * matrix.c;
}

/** The map back; undefined if the matrix flattens the plane or is not finite. */
export function invert(matrix: Matrix): Matrix | undefined {
    const scale = 1 / determinant(matrix);
    if (!Number.isFinite(scale) || scale === 0) return undefined;
    const { a, b, c, d, e, f } = matrix;
    return {
        a: d * scale,
        b: -b * scale,
        c: -c * scale,
        d: a * scale,
        e: (c * f - d * e) * scale,
        f: (b * e - a * f) * scale,
    };
}

export function translation(dx: number, dy: number): Matrix {
    return { ...identity, e: dx, f: dy };
}

/** A turn by an angle in rad about a point; positive is clockwise as seen, since y points down. */
export function rotation(angle: number, aboutX = 0, aboutY = 0): Matrix {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    return { a: cos, b: sin, c: -sin, d: cos, e: aboutX - cos * aboutX + sin * aboutY, f: aboutY - sin * aboutX - cos * aboutY };
}

/** The points of a ring under a matrix, in the same order. */
export function transformRing(ring: Ring, matrix: Matrix): Ring {
    const { a, b, c, d, e, f } = matrix;
    const out = new Float64Array(ring.length);
    for (let i = 0; i + 1 < ring.length; i += 2) {
        const x = ring[i]!;
        const y = ring[i + 1]!;
        out[i] = a * x + c * y + e;
        out[i + 1] = b * x + d * y + f;
    }
    return out;
}

/**
 * A region under a matrix. One that mirrors turns every ring around, so that outer rings stay
 * positive; one that flattens the plane, or is not finite, leaves an empty region.
 */
export function transform(region: Region, matrix: Matrix): Region {
    const factor = determinant(matrix);
    if (!Number.isFinite(factor + matrix.e + matrix.f) || factor === 0) return { rings: [] };
    const rings = region.rings.map((ring) => transformRing(ring, matrix));
    return { rings: factor < 0 ? rings.map(reversed) : rings };
}

export function translate(region: Region, dx: number, dy: number): Region {
    return transform(region, translation(dx, dy));
}

/** Turned by an angle in rad about a point; positive is clockwise as seen. */
export function rotate(region: Region, angle: number, aboutX = 0, aboutY = 0): Region {
    return transform(region, rotation(angle, aboutX, aboutY));
}

/** Turned over left to right, about the vertical line at `aboutX`: what the veneer half of an inlay needs. */
export function mirror(region: Region, aboutX: number): Region {
    return transform(region, { ...identity, a: -1, e: 2 * aboutX });
}
