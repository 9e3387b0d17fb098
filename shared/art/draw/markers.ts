import { type Matrix, multiply, rotation, translation } from '../../geometry/transform';
import { parseAngle } from '../frame/angle';
import { splitLength, toPixels } from '../frame/length';
import { parseViewBox, viewBoxMatrix } from '../frame/view-box';
import { shapes } from '../shape/basic-shapes';
import { type Vertex, Vertices } from '../shape/vertices';
import { type Computed, computeStyle } from '../style/computed';
import { parseUrl } from '../style/url';
import type { SvgElement } from '../xml/tree';
import { clipToBox } from './clip-box';
import { type Context, type Drawing, lengthsOf, mayDraw, type Place } from './drawing';
import { valuesOf } from './outline';
import { resolve } from './reference';
import { type Visitor, walk } from './walk';

const marked = new Set(['path', 'line', 'polyline', 'polygon']);

/** Draws a shape's markers at its vertices (SVG 2, section 11.6). */
export function drawMarkers(drawing: Drawing, element: SvgElement, computed: Computed, place: Place, visitor: Visitor): void {
    if (!marked.has(element.name)) return;
    const { style } = computed;
    const [start, mid, end] = [style.markerStart, style.markerMid, style.markerEnd].map((value) => {
        const url = value === 'none' ? undefined : parseUrl(value)?.reference;
        const target = url === undefined ? undefined : resolve(url, drawing.tree, drawing.problems, element);
        return target?.name === 'marker' && !place.within.includes(target) ? target : undefined;
    });
    if (start === undefined && mid === undefined && end === undefined) return;
    const sink = new Vertices();
    shapes.get(element.name)!(valuesOf(drawing, element, computed, place), sink);
    const vertices = sink.list();
    vertices.forEach((vertex, i) => {
        const last = i === vertices.length - 1;
        const shape: Context = { element, style, place };
        if (start !== undefined && i === 0) drawMarker(drawing, start, vertex, true, shape, visitor);
        if (mid !== undefined && i > 0 && !last) drawMarker(drawing, mid, vertex, false, shape, visitor);
        if (end !== undefined && last) drawMarker(drawing, end, vertex, false, shape, visitor);
    });
}

function drawMarker(
    drawing: Drawing,
    marker: SvgElement,
    vertex: Vertex,
    first: boolean,
    context: Context,
    visitor: Visitor,
): void {
    if (!mayDraw(drawing, marker)) return;
    const { style, place: outer } = context;
    const { attributes } = marker;
    const around = drawing.inherited.around(marker);
    const computed = computeStyle(marker, around, drawing.cascade, lengthsOf(drawing, outer), drawing.problems);
    const lengths = { ...lengthsOf(drawing, outer), fontSize: computed.style.fontSize };
    const width = toPixels(attributes.markerWidth ?? '3', 'x', lengths) ?? 0;
    const height = toPixels(attributes.markerHeight ?? '3', 'y', lengths) ?? 0;
    if (!(width > 0 && height > 0)) return;
    const box = parseViewBox(attributes.viewBox);
    const view = box === undefined ? translation(0, 0) : viewBoxMatrix(box, width, height, attributes.preserveAspectRatio);
    const refX = reference(attributes.refX, { left: 0, center: 0.5, right: 1 }, box?.x ?? 0, box?.width ?? width);
    const refY = reference(attributes.refY, { top: 0, center: 0.5, bottom: 1 }, box?.y ?? 0, box?.height ?? height);
    const scale = attributes.markerUnits === 'userSpaceOnUse' ? 1 : style.strokeWidth;
    const turned = multiply(translation(vertex.x, vertex.y), rotation(angleOf(attributes.orient, vertex.angle, first)));
    const scaled: Matrix = { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 };
    const shift = translation(-(view.a * refX + view.e), -(view.d * refY + view.f));
    const frame = multiply(multiply(multiply(outer.matrix, turned), scaled), shift);
    const place: Place = {
        ...outer,
        matrix: multiply(frame, view),
        width: box?.width ?? width,
        height: box?.height ?? height,
        style: computed.style,
        clip: computed.style.clips ? clipToBox(outer.clip, frame, { minX: 0, minY: 0, maxX: width, maxY: height }) : outer.clip,
        depth: outer.depth + 1,
        within: [...outer.within, marker],
        context,
    };
    visitor.around(marker, computed, place, (inner) => {
        for (const child of marker.children) walk(drawing, child, inner, visitor);
    });
}

function angleOf(orient: string | undefined, along: number, first: boolean): number {
    if (orient === 'auto') return along;
    if (orient === 'auto-start-reverse') return first ? along + Math.PI : along;
    return parseAngle(orient ?? '0') ?? 0;
}

/** refX or refY, in the marker's own units. */
function reference(text: string | undefined, words: Readonly<Record<string, number>>, from: number, size: number): number {
    const share = Object.hasOwn(words, text ?? '') ? words[text!] : undefined;
    if (share !== undefined) return from + share * size;
    const length = splitLength(text ?? '0');
    return length === undefined ? 0 : length.unit === '%' ? (length.number / 100) * size : length.number;
}
