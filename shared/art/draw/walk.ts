import { identity, type Matrix, multiply, translation } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import { type Axis, toPixels } from '../frame/length';
import { parseTransform } from '../frame/transform-list';
import { parseViewBox, viewBoxMatrix } from '../frame/view-box';
import { limits } from '../limits';
import { shapes } from '../shape/basic-shapes';
import { type Computed, computeStyle } from '../style/computed';
import type { SvgElement } from '../xml/tree';
import { boxOfPlace, clipToBox } from './clip-box';
import { chosenChild, conditionsHold } from './conditions';
import { type Drawing, lengthsOf, mayDraw, type Place } from './drawing';
import { resolve } from './reference';

/** What is done with the elements that a walk comes to. */
export interface Visitor {
    /** A shape, at a place that includes its own transform. */
    shape(element: SvgElement, computed: Computed, place: Place): void;
    /** Anything drawn, shapes too: `inner` draws it, as often as wanted and with whatever place. */
    around(element: SvgElement, computed: Computed, place: Place, inner: (place: Place) => void): void;
    /** An element that is neither a shape nor a container. */
    other(element: SvgElement): void;
}

/** Elements that only matter where something refers to them, or say something about the drawing. */
const silent = new Set(
    'defs style title desc metadata symbol clipPath mask marker linearGradient radialGradient pattern filter view stop'.split(
        ' ',
    ),
);

export function walk(drawing: Drawing, element: SvgElement, outer: Place, visitor: Visitor): void {
    const { name } = element;
    if (silent.has(name)) return;
    const draw = shapes.get(name);
    const container = name === 'g' || name === 'a' || name === 'svg' || name === 'use' || name === 'switch';
    if (draw === undefined && !container) {
        visitor.other(element);
        return;
    }
    if (!conditionsHold(element) || !mayDraw(drawing, element)) return;
    if (outer.depth >= limits.depth) {
        drawing.problems.add(
            'too-large',
            'depth',
            phrase`Elements nested more than ${limits.depth} deep are left out.`,
            element.offset,
        );
        return;
    }
    const computed = computeStyle(element, outer.style, drawing.cascade, lengthsOf(drawing, outer), drawing.problems);
    if (!computed.style.shown) return;
    const place = placeOf(drawing, element, computed, outer);
    visitor.around(element, computed, place, (inner) => {
        if (draw !== undefined) {
            visitor.shape(element, computed, inner);
            for (const child of element.children) walkInShape(child, visitor);
        } else if (name === 'svg') {
            walkViewport(drawing, element, element, computed, inner, visitor);
        } else if (name === 'use') {
            walkUse(drawing, element, computed, inner, visitor);
        } else if (name === 'switch') {
            const chosen = chosenChild(element);
            if (chosen !== undefined) walk(drawing, chosen, inner, visitor);
        } else {
            for (const child of element.children) walk(drawing, child, inner, visitor);
        }
    });
}

/** Of a shape's children only animations would show. */
function walkInShape(child: SvgElement, visitor: Visitor): void {
    if (!silent.has(child.name)) visitor.other(child);
}

/** The place inside an element: its own transform, style, id and classes added. */
function placeOf(drawing: Drawing, element: SvgElement, computed: Computed, outer: Place): Place {
    const { id, class: classes } = element.attributes;
    const words = classes?.split(/\s+/).filter((word) => word !== '') ?? [];
    const transform = transformOf(drawing, element, computed, outer);
    return {
        ...outer,
        matrix: transform === identity ? outer.matrix : multiply(outer.matrix, transform),
        style: computed.style,
        ids: id === undefined || id === '' ? outer.ids : [id, ...outer.ids],
        classes: words.length === 0 ? outer.classes : [...words, ...outer.classes],
        depth: outer.depth + 1,
    };
}

export function transformOf(drawing: Drawing, element: SvgElement, computed: Computed, place: Place): Matrix {
    const written = computed.text('transform');
    if (written === undefined) return identity;
    const context = { ...lengthsOf(drawing, place), fontSize: computed.style.fontSize };
    const matrix = parseTransform(written, (text, axis) => toPixels(text, axis, context));
    if (matrix === undefined) {
        const { problems } = drawing;
        problems.add(
            'unreadable',
            element.name,
            phrase`The transform of <${element.name}> could not be read and is left out.`,
            element.offset,
        );
        return identity;
    }
    const origin = computed.text('transform-origin')?.trim().split(/\s+/);
    if (origin === undefined) return matrix;
    const x = toPixels(side(origin[0] ?? '0'), 'x', context) ?? 0;
    const y = toPixels(side(origin[1] ?? '50%'), 'y', context) ?? 0;
    return multiply(translation(x, y), multiply(matrix, translation(-x, -y)));
}

function side(text: string): string {
    if (text === 'left' || text === 'top') return '0';
    if (text === 'center') return '50%';
    return text === 'right' || text === 'bottom' ? '100%' : text;
}

/** Draws a nested `svg`, or a `symbol` that `sized` (a `use`) shows. */
function walkViewport(
    drawing: Drawing,
    element: SvgElement,
    sized: SvgElement,
    computed: Computed,
    place: Place,
    visitor: Visitor,
): void {
    const context = { ...lengthsOf(drawing, place), fontSize: computed.style.fontSize };
    const read = (name: string, axis: Axis, fallback: string) => {
        const written = sized.attributes[name] ?? computed.text(name);
        return toPixels(written === undefined || written === 'auto' ? fallback : written, axis, context) ?? 0;
    };
    const nested = element.name === 'svg';
    // Where a use stands has been taken into account; only its size goes before the element's own.
    const x = nested ? (toPixels(computed.text('x') ?? '0', 'x', context) ?? 0) : 0;
    const y = nested ? (toPixels(computed.text('y') ?? '0', 'y', context) ?? 0) : 0;
    const width = read('width', 'x', '100%');
    const height = read('height', 'y', '100%');
    if (!(width > 0 && height > 0)) return;
    const box = parseViewBox(element.attributes.viewBox);
    const frame = multiply(place.matrix, translation(x, y));
    const clip = computed.style.clips ? clipToBox(place.clip, frame, boxOfPlace(width, height)) : place.clip;
    const inner = box === undefined ? identity : viewBoxMatrix(box, width, height, element.attributes.preserveAspectRatio);
    const viewport = {
        ...place,
        clip,
        matrix: multiply(frame, inner),
        width: box?.width ?? width,
        height: box?.height ?? height,
    };
    for (const child of element.children) walk(drawing, child, viewport, visitor);
}

function walkUse(drawing: Drawing, use: SvgElement, computed: Computed, place: Place, visitor: Visitor): void {
    const { href } = use.attributes;
    const target = href === undefined ? undefined : resolve(href, drawing.tree, drawing.problems, use);
    if (target === undefined) return;
    if (place.within.includes(target) || isAround(target, use)) {
        drawing.problems.add('refused', 'use', phrase`<use> would draw something inside itself.`, use.offset);
        return;
    }
    const context = { ...lengthsOf(drawing, place), fontSize: computed.style.fontSize };
    const x = toPixels(computed.text('x') ?? '0', 'x', context) ?? 0;
    const y = toPixels(computed.text('y') ?? '0', 'y', context) ?? 0;
    const moved: Place = {
        ...place,
        matrix: multiply(place.matrix, translation(x, y)),
        within: [...place.within, target],
        context: place.context ?? { element: use, style: computed.style, place },
    };
    if (target.name !== 'symbol' && target.name !== 'svg') {
        walk(drawing, target, moved, visitor);
        return;
    }
    const inner = computeStyle(target, moved.style, drawing.cascade, lengthsOf(drawing, moved), drawing.problems);
    if (!inner.style.shown || !mayDraw(drawing, target)) return;
    const placed = placeOf(drawing, target, inner, moved);
    const sized =
        target.name === 'symbol' || use.attributes.width !== undefined || use.attributes.height !== undefined ? use : target;
    visitor.around(target, inner, placed, (within) => walkViewport(drawing, target, sized, inner, within, visitor));
}

function isAround(outer: SvgElement, inner: SvgElement): boolean {
    for (let at: SvgElement | undefined = inner; at !== undefined; at = at.parent) if (at === outer) return true;
    return false;
}
