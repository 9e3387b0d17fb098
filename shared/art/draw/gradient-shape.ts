import { identity, type Matrix, multiply } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import type { GradientShape } from '../compose/shading';
import { type Axis, type LengthContext, toPixels } from '../frame/length';
import { parseTransform } from '../frame/transform-list';
import type { SvgElement } from '../xml/tree';
import { boundingBox } from './bounding-box';
import { type Drawing, lengthsOf, type Place } from './drawing';
import { takenOver } from './reference';

/** In its own units; a gradient that is shorter has no extent. */
const shortest = 1e-12;

/** Beyond its circle the focal point counts as lying on it (SVG 1.1, 13.2.3), or as good as. */
const outermostFocus = 0.999;

/**
 * `last` where a gradient has no extent, so that all of it has the colour of its last stop; undefined
 * where the element has no box that it could be measured by, or its numbers cannot be read.
 */
export function gradientShape(
    drawing: Drawing,
    gradient: SvgElement,
    element: SvgElement,
    place: Place,
): GradientShape | 'last' | undefined {
    const chain = takenOver(drawing.tree, drawing.problems, gradient);
    const written = (name: string): string | undefined => chain.find((one) => name in one.attributes)?.attributes[name];
    const ofBox = written('gradientUnits') !== 'userSpaceOnUse';
    const context = { ...lengthsOf(drawing, place), fontSize: place.style.fontSize, ...(ofBox ? { width: 1, height: 1 } : {}) };
    const number = (name: string, axis: Axis, usual: string): number =>
        toPixels(written(name) ?? usual, axis, context) ?? Number.NaN;
    const ownMatrix = ownTransform(written('gradientTransform'), context);
    const boxMatrix = ofBox ? matrixOfBox(drawing, element, place) : identity;
    if (boxMatrix === undefined || ownMatrix === undefined) return undefined;
    const matrix = multiply(place.matrix, multiply(boxMatrix, ownMatrix));
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
        if (length < shortest) return 'last';
        return Number.isFinite(length) ? { matrix, spread, line } : undefined;
    }
    const circle = circleOf(number, (name) => written(name) !== undefined);
    if (typeof circle === 'object' && circle.moved) {
        const message = phrase`The focal point of a gradient lies outside its circle; it is drawn as if it lay on it.`;
        drawing.problems.add('unsupported', 'focal point', message, gradient.offset);
    }
    return circle === undefined || circle === 'last' ? circle : { matrix, spread, circle };
}

/** From the unit square to the box of an element, in its user units; undefined for one without an area. */
function matrixOfBox(drawing: Drawing, element: SvgElement, place: Place): Matrix | undefined {
    const box = boundingBox(drawing, element, place);
    if (box === undefined || !(box.maxX > box.minX && box.maxY > box.minY)) return undefined;
    return { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY };
}

/** The transform that a gradient or pattern writes of itself; undefined where it cannot be read. */
export function ownTransform(written: string | undefined, context: LengthContext): Matrix | undefined {
    return written === undefined ? identity : parseTransform(written, (text, axis) => toPixels(text, axis, context));
}

/** The circles of a radial gradient, with the focal point inside the larger one. */
function circleOf(
    number: (name: string, axis: Axis, usual: string) => number,
    isWritten: (name: string) => boolean,
): (NonNullable<GradientShape['circle']> & { readonly moved: boolean }) | 'last' | undefined {
    const cx = number('cx', 'x', '50%');
    const cy = number('cy', 'y', '50%');
    const r = number('r', 'diagonal', '50%');
    const fx = isWritten('fx') ? number('fx', 'x', '50%') : cx;
    const fy = isWritten('fy') ? number('fy', 'y', '50%') : cy;
    const fr = number('fr', 'diagonal', '0%');
    if (r >= 0 && r < shortest) return 'last';
    if (!(r > 0 && fr >= 0 && fr < r && Number.isFinite(r + cx + cy + fx + fy))) return undefined;
    const outside = Math.hypot(fx - cx, fy - cy) / (outermostFocus * (r - fr));
    if (outside <= 1) return { cx, cy, r, fx, fy, fr, moved: false };
    return { cx, cy, r, fr, fx: cx + (fx - cx) / outside, fy: cy + (fy - cy) / outside, moved: outside > 1 / outermostFocus };
}
