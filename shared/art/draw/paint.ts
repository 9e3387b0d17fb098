import { phrase } from '../../recipe/phrase';
import type { Colour } from '../style/colour';
import type { Paint, Style } from '../style/properties';
import type { SvgElement } from '../xml/tree';
import type { Context, Drawing, Place } from './drawing';
import { resolve } from './reference';

/** What a paint comes down to: a colour with its alpha, or a gradient or pattern as it runs over some element. */
export type ResolvedPaint =
    | { readonly kind: 'colour'; readonly colour: Colour }
    | { readonly kind: 'gradient' | 'pattern'; readonly server: SvgElement; readonly element: SvgElement; readonly place: Place };

/** Undefined if it paints nothing. */
export function resolvePaint(
    drawing: Drawing,
    paint: Paint,
    style: Style,
    element: SvgElement,
    place: Place,
): ResolvedPaint | undefined {
    switch (paint.kind) {
        case 'none':
            return undefined;
        case 'colour':
            return { kind: 'colour', colour: paint.colour };
        case 'current':
            return { kind: 'colour', colour: style.color };
        case 'context':
            return ofContext(drawing, paint.of, place.context);
        case 'server': {
            const server = resolve(paint.reference, drawing.tree, drawing.problems, element);
            if (server?.name === 'linearGradient' || server?.name === 'radialGradient') {
                return { kind: 'gradient', server, element, place };
            }
            if (server?.name === 'pattern') return { kind: 'pattern', server, element, place };
            if (server !== undefined) {
                const message = phrase`A <${server.name}> is no paint; <${element.name}> is left without it.`;
                drawing.problems.add('unsupported', server.name, message, element.offset);
            }
            return paint.fallback === undefined ? undefined : resolvePaint(drawing, paint.fallback, style, element, place);
        }
    }
}

function ofContext(drawing: Drawing, of: 'fill' | 'stroke', context: Context | undefined): ResolvedPaint | undefined {
    if (context === undefined) return undefined;
    const { style, element, place } = context;
    return resolvePaint(drawing, style[of], style, element, place);
}
