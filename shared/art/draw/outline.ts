import type { Path } from '../../geometry/widen';
import { phrase } from '../../recipe/phrase';
import { toPixels } from '../frame/length';
import { type ShapeValues, shapes } from '../shape/basic-shapes';
import { Flattener } from '../shape/flatten';
import type { Computed } from '../style/computed';
import type { SvgElement } from '../xml/tree';
import { type Drawing, lengthsOf, type Place } from './drawing';

/**
 * A shape's outline in user units, flattened. `bend` is the largest turn between chords in rad
 * (see Flattener); π where only the fill counts.
 */
export function outlineOf(
    drawing: Drawing,
    element: SvgElement,
    computed: Computed,
    place: Place,
    bend: number,
): readonly Path[] {
    const { problems, allowance } = drawing;
    const { name, offset } = element;
    const sink = new Flattener(drawing.tolerance / largestScale(place), bend, allowance);
    shapes.get(name)!(valuesOf(drawing, element, computed, place), sink);
    const paths = sink.end();
    if (sink.broken)
        problems.add('too-large', name, phrase`<${name}> has coordinates too large to read; they are left out.`, offset);
    if (allowance.corners <= 0 && !allowance.told) {
        allowance.told = true;
        problems.add('too-large', name, phrase`The drawing has more corners than are read; the rest is left out.`, offset);
    }
    return paths;
}

/** How a shape reads its attributes where it stands. */
export function valuesOf(drawing: Drawing, element: SvgElement, computed: Computed, place: Place): ShapeValues {
    const context = { ...lengthsOf(drawing, place), fontSize: computed.style.fontSize };
    const { name, offset } = element;
    const broken = (attribute: string) => {
        const message = phrase`The ${attribute} of <${name}> has an error; it is drawn as far as it could be read.`;
        drawing.problems.add('unreadable', name, message, offset);
    };
    return {
        text: (attribute) => computed.text(attribute),
        length: (attribute, axis) => {
            const written = computed.text(attribute);
            if (written === undefined || written === 'auto') return undefined;
            const value = toPixels(written, axis, context);
            if (value === undefined) broken(attribute);
            return value;
        },
        broken,
    };
}

/** By how much a place stretches at most: the larger singular value of its matrix. Never 0, so that one can divide by it. */
export function largestScale({ matrix: { a, b, c, d } }: Pick<Place, 'matrix'>): number {
    const half = (a * a + b * b + c * c + d * d) / 2;
    const determinant = a * d - b * c;
    const scale = Math.sqrt(half + Math.sqrt(Math.max(0, half * half - determinant * determinant)));
    return Number.isFinite(scale) && scale > 0 ? scale : 1;
}
