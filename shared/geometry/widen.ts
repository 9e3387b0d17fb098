import { combine } from './engine';
import { type Join, Outline, withoutRepeats } from './outline';
import { emptyRegion, type Region, type Ring } from './region';
import { reversed } from './reverse';
import { flatteningTolerance, usableTolerance } from './shapes';
import { type Matrix, transformRing } from './transform';

export type Cap = 'butt' | 'round' | 'square';

/** A flattened subpath: x0, y0, x1, y1, … */
export interface Path {
    readonly points: Float64Array;
    readonly closed: boolean;
}

export interface Stroke {
    readonly width: number;
    readonly cap: Cap;
    readonly join: Join;
    /** SVG's stroke-miterlimit: a mitre longer than this many widths becomes a bevel. */
    readonly miterLimit: number;
    /** Applied to the outline after widening, so that an uneven scale also stretches the stroke, as SVG wants. */
    readonly matrix?: Matrix;
}

/**
 * The area that a stroke covers, by SVG's rules. A subpath without length (one point, or all its
 * points the same) draws a dot with round and square caps and nothing with butt ones; leave bare
 * movetos out beforehand. A width that is not positive and finite covers nothing. Points are in
 * mm, or in the units from which `matrix` leads to mm; `tolerance` is in mm.
 */
export function widen(paths: readonly Path[], stroke: Stroke, tolerance = flatteningTolerance): Region {
    const radius = stroke.width / 2;
    if (!(radius > 0) || !Number.isFinite(radius)) return emptyRegion;
    const scale = stroke.matrix === undefined ? 1 : largestScale(stroke.matrix);
    if (!(scale > 0) || !Number.isFinite(scale)) return emptyRegion;
    const outline = new Outline(radius, stroke.join, stroke.miterLimit, usableTolerance(tolerance) / scale);
    const raw: Ring[] = [];
    for (const path of paths) {
        const points = withoutRepeats(path.points, path.closed);
        if (points.length === 0) continue;
        if (points.length === 2) {
            dot(outline, points[0]!, points[1]!, radius, stroke.cap);
        } else if (path.closed) {
            outline.side(points, true);
            raw.push(outline.take());
            outline.side(reversed(points), true);
        } else {
            along(outline, points, radius, stroke.cap);
        }
        const ring = outline.take();
        if (ring.length > 0) raw.push(ring);
    }
    if (raw.length === 0) return emptyRegion;
    const { matrix } = stroke;
    return combine('union', 'nonzero', matrix === undefined ? raw : raw.map((ring) => transformRing(ring, matrix)), []);
}

function dot(outline: Outline, x: number, y: number, radius: number, cap: Cap): void {
    if (cap === 'square') {
        outline.add(x - radius, y - radius);
        outline.add(x + radius, y - radius);
        outline.add(x + radius, y + radius);
        outline.add(x - radius, y + radius);
    } else if (cap === 'round') {
        outline.add(x + radius, y);
        outline.arc(x, y, radius, 0, 2 * Math.PI);
    }
}

/** There and back again along an open path, with a cap at each end. */
function along(outline: Outline, points: Float64Array, radius: number, cap: Cap): void {
    for (const way of [points, reversed(points)]) {
        outline.side(way, false);
        const size = way.length;
        const x = way[size - 2]!;
        const y = way[size - 1]!;
        const dx = x - way[size - 4]!;
        const dy = y - way[size - 3]!;
        const scale = radius / Math.hypot(dx, dy);
        const armX = dy * scale;
        const armY = -dx * scale;
        if (cap === 'round') {
            outline.arc(x, y, armX, armY, Math.PI);
        } else if (cap === 'square') {
            outline.add(x + armX - armY, y + armY + armX);
            outline.add(x - armX - armY, y - armY + armX);
        }
    }
}

/** The larger singular value: by how much a matrix stretches at most. */
function largestScale({ a, b, c, d }: Matrix): number {
    const half = (a * a + b * b + c * c + d * d) / 2;
    const determinant = a * d - b * c;
    return Math.sqrt(half + Math.sqrt(Math.max(0, half * half - determinant * determinant)));
}
