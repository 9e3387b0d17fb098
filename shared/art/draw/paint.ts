import type { Colour } from '../style/colour';
import type { Paint, Style } from '../style/properties';
import type { SvgElement } from '../xml/tree';
import type { Context, Drawing, Place } from './drawing';
import { averageOf } from './gradient';
import { resolve } from './reference';

/** The colour that a paint comes down to, with its alpha; undefined if it paints nothing. */
export function colourOf(drawing: Drawing, paint: Paint, style: Style, element: SvgElement, place: Place): Colour | undefined {
    switch (paint.kind) {
        case 'none':
            return undefined;
        case 'colour':
            return paint.colour;
        case 'current':
            return style.color;
        case 'context':
            return ofContext(drawing, paint.of, place.context);
        case 'server': {
            const server = resolve(paint.reference, drawing.tree, drawing.problems, element);
            if (server?.name === 'linearGradient' || server?.name === 'radialGradient') return averageOf(drawing, server, place);
            if (server !== undefined) {
                const message = `A ${server.name} fill is not supported; <${element.name}> is left without it.`;
                drawing.problems.add('unsupported', server.name, message, element.offset);
            }
            return paint.fallback === undefined ? undefined : colourOf(drawing, paint.fallback, style, element, place);
        }
    }
}

function ofContext(drawing: Drawing, of: 'fill' | 'stroke', context: Context | undefined): Colour | undefined {
    if (context === undefined) return undefined;
    const { style, element, place } = context;
    return colourOf(drawing, style[of], style, element, place);
}
