import { splitLength } from '../frame/length';
import { limits } from '../limits';
import type { Colour } from '../style/colour';
import { computeStyle } from '../style/computed';
import type { SvgElement } from '../xml/tree';
import { type Drawing, lengthsOf, type Place } from './drawing';
import { resolve } from './reference';

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

export interface Ramp {
    /** Takes 0 to 1. */
    readonly colourAt: (t: number) => Colour;
    readonly opaque: boolean;
}

/** A gradient's colour at each part of its length; undefined if all of it is the same. */
export function rampOf(drawing: Drawing, gradient: SvgElement, place: Place): Ramp | undefined {
    const stops = stopsOf(drawing, gradient, place);
    const [first] = stops;
    if (first === undefined || stops.every(({ colour }) => same(colour, first.colour))) return undefined;
    const colourAt = (t: number): Colour => {
        const after = stops.findIndex(({ at }) => at > t);
        if (after === 0) return first.colour;
        const from = stops[(after < 0 ? stops.length : after) - 1]!;
        if (after < 0) return from.colour;
        const to = stops[after]!;
        return mixed(from.colour, to.colour, (t - from.at) / (to.at - from.at));
    };
    return { colourAt, opaque: stops.every(({ colour }) => colour.alpha === 1) };
}

function mixed(a: Colour, b: Colour, share: number): Colour {
    const mix = (from: number, to: number): number => from + (to - from) * share;
    return {
        red: mix(a.red, b.red),
        green: mix(a.green, b.green),
        blue: mix(a.blue, b.blue),
        alpha: mix(a.alpha, b.alpha),
    };
}

/** A gradient's stops, its own or those of the gradient it refers to; offsets never fall, as the standard wants. */
function stopsOf(drawing: Drawing, gradient: SvgElement, place: Place): Stop[] {
    let source: SvgElement | undefined = gradient;
    for (let hops = 0; source !== undefined && hops < limits.depth; hops++) {
        const stops = source.children.filter(({ name }) => name === 'stop');
        if (stops.length > 0) return readStops(drawing, stops, place);
        const href: string | undefined = source.attributes.href;
        source = href === undefined ? undefined : resolve(href, drawing.tree, drawing.problems, source);
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
