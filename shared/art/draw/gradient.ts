import { phrase } from '../../recipe/phrase';
import type { GradientShape, Shading } from '../compose/shading';
import { splitLength } from '../frame/length';
import { type Colour, darknessOf } from '../style/colour';
import { computeStyle } from '../style/computed';
import type { SvgElement } from '../xml/tree';
import { type Drawing, lengthsOf, type Place } from './drawing';
import { gradientShape } from './gradient-shape';
import { takenOver } from './reference';

interface Stop {
    readonly at: number;
    readonly colour: Colour;
}

/** A gradient's mean colour along its length. */
export function averageOf(drawing: Drawing, gradient: SvgElement, place: Place): Colour | undefined {
    const stops = stopsOf(drawing, gradient, place);
    const [first] = stops;
    if (first === undefined) return undefined;
    if (stops.every(({ colour }) => same(colour, first.colour))) return first.colour;
    let red = 0;
    let green = 0;
    let blue = 0;
    let alpha = 0;
    const add = (colour: Colour, share: number) => {
        red += colour.red * colour.alpha * share;
        green += colour.green * colour.alpha * share;
        blue += colour.blue * colour.alpha * share;
        alpha += colour.alpha * share;
    };
    let from: Stop = { at: 0, colour: first.colour };
    for (const stop of [...stops, { at: 1, colour: stops.at(-1)!.colour }]) {
        const share = (stop.at - from.at) / 2;
        add(from.colour, share);
        add(stop.colour, share);
        from = stop;
    }
    return alpha > 0 ? { red: red / alpha, green: green / alpha, blue: blue / alpha, alpha } : undefined;
}

/**
 * How the paint of a gradient runs over an element, at some opacity; one colour where all of it has the same.
 * Undefined where it paints nothing.
 */
export function shadingOf(
    drawing: Drawing,
    gradient: SvgElement,
    element: SvgElement,
    place: Place,
    opacity: number,
): Shading | Colour | undefined {
    const stops = stopsOf(drawing, gradient, place);
    const [first] = stops;
    if (first === undefined) return undefined;
    if (stops.every(({ colour }) => same(colour, first.colour))) return first.colour;
    const shape = gradientShape(drawing, gradient, element, place);
    if (shape === 'last') return stops.at(-1)!.colour;
    if (shape === undefined) {
        const message = phrase`A gradient has no box on <${element.name}> to be measured by, or figures that cannot be read; nothing is painted with it.`;
        drawing.problems.add('unsupported', gradient.name, message, element.offset);
        return undefined;
    }
    if (turnOf(shape) < finestTurn) {
        const message = phrase`A gradient begins again every ${turnOf(shape).toPrecision(2)} mm, finer than any beam; it is taken as its average darkness.`;
        drawing.problems.add('unsupported', gradient.name, message, gradient.offset);
        return averageOf(drawing, gradient, place);
    }
    const message = phrase`A gradient burns whole where it is darker than the threshold, and not at all elsewhere: a burn has one depth.`;
    drawing.problems.add('unsupported', gradient.name, message, gradient.offset);
    return {
        shape,
        stops: stops.map(({ at, colour }) => ({ at, darkness: darknessOf(colour), opacity: colour.alpha * opacity, colour })),
    };
}

/** mm; what turns from dark to light and back within less is grey for any beam. */
const finestTurn = 0.02;

/** mm on the page after which a gradient begins again, at its shortest. */
function turnOf({ spread, matrix, line, circle }: GradientShape): number {
    if (spread === 'pad') return Number.POSITIVE_INFINITY;
    const length = line === undefined ? circle!.r - circle!.fr : Math.hypot(line.x2 - line.x1, line.y2 - line.y1);
    return length * Math.min(Math.hypot(matrix.a, matrix.b), Math.hypot(matrix.c, matrix.d));
}

/** A gradient's stops, its own or those of the gradient it refers to; offsets never fall, as the standard wants. */
function stopsOf(drawing: Drawing, gradient: SvgElement, place: Place): Stop[] {
    for (const { children } of takenOver(drawing.tree, drawing.problems, gradient)) {
        const stops = children.filter(({ name }) => name === 'stop');
        if (stops.length > 0) return readStops(drawing, stops, place);
    }
    return [];
}

function readStops(drawing: Drawing, stops: readonly SvgElement[], place: Place): Stop[] {
    const lengths = lengthsOf(drawing, place);
    let at = 0;
    return stops.map((stop) => {
        const { style } = computeStyle(stop, drawing.inherited.around(stop), drawing.cascade, lengths, drawing.problems);
        const written = splitLength(stop.attributes.offset ?? '0');
        const offset = written === undefined ? 0 : written.unit === '%' ? written.number / 100 : written.number;
        at = Math.max(at, Math.min(1, Math.max(0, offset)));
        const colour = style.stopColour === 'current' ? style.color : style.stopColour;
        return { at, colour: { ...colour, alpha: colour.alpha * style.stopOpacity } };
    });
}

function same(a: Colour, b: Colour): boolean {
    return a.red === b.red && a.green === b.green && a.blue === b.blue && a.alpha === b.alpha;
}
