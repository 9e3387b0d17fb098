import { type Matrix, multiply } from '../../geometry/transform';
import { toPixels } from '../frame/length';
import { parseTransform } from '../frame/transform-list';
import { limits } from '../limits';
import type { SvgElement } from '../xml/tree';
import { boundingBox } from './bounding-box';
import { type Drawing, lengthsOf, type Place } from './drawing';
import { resolve } from './reference';

/** Where a gradient runs, in its own units, and the map from those to mm on the page. */
export interface GradientShape {
    readonly matrix: Matrix;
    readonly spread: 'pad' | 'reflect' | 'repeat';
    /** From 0 at (x1, y1) to 1 at (x2, y2); or from a focal point to a circle. */
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

/** Undefined where a gradient has no extent, or its numbers cannot be read. */
export function gradientShape(
    drawing: Drawing,
    gradient: SvgElement,
    element: SvgElement,
    place: Place,
): GradientShape | undefined {
    const chain = chainOf(drawing, gradient);
    const written = (name: string): string | undefined => chain.find((one) => name in one.attributes)?.attributes[name];
    const ofBox = written('gradientUnits') !== 'userSpaceOnUse';
    const context = { ...lengthsOf(drawing, place), fontSize: place.style.fontSize, ...(ofBox ? { width: 1, height: 1 } : {}) };
    const number = (name: string, axis: 'x' | 'y' | 'diagonal', usual: string): number =>
        toPixels(written(name) ?? usual, axis, context) ?? Number.NaN;
    let { matrix } = place;
    if (ofBox) {
        const box = boundingBox(drawing, element, place);
        if (box === undefined || !(box.maxX > box.minX && box.maxY > box.minY)) return undefined;
        matrix = multiply(matrix, { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY });
    }
    const transform = written('gradientTransform');
    const own = transform === undefined ? undefined : parseTransform(transform, (text, axis) => toPixels(text, axis, context));
    if (transform !== undefined && own === undefined) return undefined;
    if (own !== undefined) matrix = multiply(matrix, own);
    const method = written('spreadMethod');
    const spread = method === 'reflect' || method === 'repeat' ? method : 'pad';
    if (gradient.name === 'linearGradient') {
        const line = {
            x1: number('x1', 'x', '0%'),
            y1: number('y1', 'y', '0%'),
            x2: number('x2', 'x', '100%'),
            y2: number('y2', 'y', '0%'),
        };
        const length = Math.hypot(line.x2 - line.x1, line.y2 - line.y1);
        return length > 0 && Number.isFinite(length) ? { matrix, spread, line } : undefined;
    }
    const cx = number('cx', 'x', '50%');
    const cy = number('cy', 'y', '50%');
    const r = number('r', 'diagonal', '50%');
    const fx = written('fx') === undefined ? cx : number('fx', 'x', '50%');
    const fy = written('fy') === undefined ? cy : number('fy', 'y', '50%');
    const fr = number('fr', 'diagonal', '0%');
    // Beyond the circle the gradient is a cone, which nobody draws.
    const inside = Math.hypot(fx - cx, fy - cy) < 0.999 * (r - fr);
    return inside && fr >= 0 && r > 0 && Number.isFinite(r) ? { matrix, spread, circle: { cx, cy, r, fx, fy, fr } } : undefined;
}

/** The gradient and those it takes over from, the nearest first. */
function chainOf(drawing: Drawing, gradient: SvgElement): SvgElement[] {
    const chain: SvgElement[] = [];
    let at: SvgElement | undefined = gradient;
    while (at !== undefined && chain.length < limits.depth && !chain.includes(at)) {
        chain.push(at);
        const href: string | undefined = at.attributes.href;
        at = href === undefined ? undefined : resolve(href, drawing.tree, drawing.problems, at);
    }
    return chain;
}
