import { type LengthContext, splitLength, toPixels } from '../frame/length';
import { black, type Colour, parseColour } from './colour';
import { parseUrl } from './url';

/**
 * What fills or strokes: nothing, a colour, the element's own `color`, a paint of what refers to
 * it, or something drawn elsewhere in the file.
 */
export type Paint =
    | PlainPaint
    | { readonly kind: 'server'; readonly reference: string; readonly fallback: PlainPaint | undefined };

type PlainPaint =
    | { readonly kind: 'context'; readonly of: 'fill' | 'stroke' }
    | { readonly kind: 'none' }
    | { readonly kind: 'colour'; readonly colour: Colour }
    | { readonly kind: 'current' };

export type PaintLayer = 'fill' | 'stroke' | 'markers';

/** The properties that decide what is seen, computed; lengths in user units. */
export interface Style {
    readonly color: Colour;
    readonly fill: Paint;
    readonly stroke: Paint;
    readonly fillOpacity: number;
    readonly strokeOpacity: number;
    readonly fillRule: 'nonzero' | 'evenodd';
    readonly clipRule: 'nonzero' | 'evenodd';
    readonly strokeWidth: number;
    readonly linecap: 'butt' | 'round' | 'square';
    readonly linejoin: 'miter' | 'round' | 'bevel';
    readonly miterLimit: number;
    readonly dashes: readonly number[];
    readonly dashOffset: number;
    readonly fontSize: number;
    readonly visible: boolean;
    readonly paintOrder: readonly PaintLayer[];
    readonly markerStart: string;
    readonly markerMid: string;
    readonly markerEnd: string;
    readonly opacity: number;
    readonly shown: boolean;
    readonly clipPath: string;
    readonly mask: string;
    readonly filter: string;
    readonly blend: string;
    readonly clips: boolean;
    readonly fixedStroke: boolean;
    readonly stopColour: Colour | 'current';
    readonly stopOpacity: number;
}

const noPaint: PlainPaint = { kind: 'none' };

/** SVG's initial values. */
export const initialStyle: Style = {
    color: black,
    fill: { kind: 'colour', colour: black },
    stroke: noPaint,
    fillOpacity: 1,
    strokeOpacity: 1,
    fillRule: 'nonzero',
    clipRule: 'nonzero',
    strokeWidth: 1,
    linecap: 'butt',
    linejoin: 'miter',
    miterLimit: 4,
    dashes: [],
    dashOffset: 0,
    fontSize: 16,
    visible: true,
    paintOrder: ['fill', 'stroke', 'markers'],
    markerStart: 'none',
    markerMid: 'none',
    markerEnd: 'none',
    opacity: 1,
    shown: true,
    clipPath: 'none',
    mask: 'none',
    filter: 'none',
    blend: 'normal',
    clips: true,
    fixedStroke: false,
    stopColour: black,
    stopOpacity: 1,
};

/** A property as it is written: which part of a Style it sets, whether children take it over, and how it is read. */
interface Property<K extends keyof Style> {
    readonly key: K;
    readonly inherited: boolean;
    /** Undefined for a value that is not valid, and so is as if it were not there. */
    readonly read: (text: string, context: LengthContext) => Style[K] | undefined;
}

type AnyProperty = { [K in keyof Style]: Property<K> }[keyof Style];

export const properties: ReadonlyMap<string, AnyProperty> = new Map<string, AnyProperty>([
    ['color', { key: 'color', inherited: true, read: parseColour }],
    ['fill', { key: 'fill', inherited: true, read: readPaint }],
    ['stroke', { key: 'stroke', inherited: true, read: readPaint }],
    ['fill-opacity', { key: 'fillOpacity', inherited: true, read: readOpacity }],
    ['stroke-opacity', { key: 'strokeOpacity', inherited: true, read: readOpacity }],
    ['fill-rule', { key: 'fillRule', inherited: true, read: word('nonzero', 'evenodd') }],
    ['clip-rule', { key: 'clipRule', inherited: true, read: word('nonzero', 'evenodd') }],
    ['stroke-width', { key: 'strokeWidth', inherited: true, read: notNegative }],
    ['stroke-linecap', { key: 'linecap', inherited: true, read: word('butt', 'round', 'square') }],
    ['stroke-linejoin', { key: 'linejoin', inherited: true, read: readJoin }],
    ['stroke-miterlimit', { key: 'miterLimit', inherited: true, read: readMiterLimit }],
    ['stroke-dasharray', { key: 'dashes', inherited: true, read: readDashes }],
    ['stroke-dashoffset', { key: 'dashOffset', inherited: true, read: (text, context) => toPixels(text, 'diagonal', context) }],
    ['visibility', { key: 'visible', inherited: true, read: (text) => text === 'visible' }],
    ['paint-order', { key: 'paintOrder', inherited: true, read: readPaintOrder }],
    ['marker-start', { key: 'markerStart', inherited: true, read: (text) => text }],
    ['marker-mid', { key: 'markerMid', inherited: true, read: (text) => text }],
    ['marker-end', { key: 'markerEnd', inherited: true, read: (text) => text }],
    ['opacity', { key: 'opacity', inherited: false, read: readOpacity }],
    ['display', { key: 'shown', inherited: false, read: (text) => text !== 'none' }],
    ['clip-path', { key: 'clipPath', inherited: false, read: (text) => text }],
    ['mask', { key: 'mask', inherited: false, read: (text) => text }],
    ['filter', { key: 'filter', inherited: false, read: (text) => text }],
    ['mix-blend-mode', { key: 'blend', inherited: false, read: (text) => text }],
    ['overflow', { key: 'clips', inherited: false, read: (text) => text !== 'visible' && text !== 'auto' }],
    ['vector-effect', { key: 'fixedStroke', inherited: false, read: (text) => text.split(/\s+/).includes('non-scaling-stroke') }],
    [
        'stop-color',
        {
            key: 'stopColour',
            inherited: false,
            read: (text) => (text.toLowerCase() === 'currentcolor' ? 'current' : parseColour(text)),
        },
    ],
    ['stop-opacity', { key: 'stopOpacity', inherited: false, read: readOpacity }],
]);

function readPaint(text: string): Paint | undefined {
    const url = parseUrl(text);
    return url === undefined
        ? readPlainPaint(text)
        : { kind: 'server', reference: url.reference, fallback: readPlainPaint(url.rest) };
}

function readPlainPaint(text: string): PlainPaint | undefined {
    if (text === 'none') return noPaint;
    if (text.toLowerCase() === 'currentcolor') return { kind: 'current' };
    if (text === 'context-fill') return { kind: 'context', of: 'fill' };
    if (text === 'context-stroke') return { kind: 'context', of: 'stroke' };
    const colour = parseColour(text);
    return colour === undefined ? undefined : { kind: 'colour', colour };
}

function readOpacity(text: string): number | undefined {
    const length = splitLength(text);
    if (length === undefined || (length.unit !== '' && length.unit !== '%')) return undefined;
    return Math.max(0, Math.min(1, length.unit === '%' ? length.number / 100 : length.number));
}

function word<T extends string>(...words: readonly T[]): (text: string) => T | undefined {
    return (text) => words.find((candidate) => candidate === text);
}

function notNegative(text: string, context: LengthContext): number | undefined {
    const value = toPixels(text, 'diagonal', context);
    return value !== undefined && value >= 0 ? value : undefined;
}

/** The joins that only SVG 2 has fall back as they do where they are not known. */
function readJoin(text: string): Style['linejoin'] | undefined {
    return text === 'miter-clip' || text === 'arcs' ? 'miter' : word('miter', 'round', 'bevel')(text);
}

function readMiterLimit(text: string): number | undefined {
    const length = splitLength(text);
    return length?.unit === '' && length.number >= 1 ? length.number : undefined;
}

function readDashes(text: string, context: LengthContext): readonly number[] | undefined {
    if (text === 'none') return [];
    const dashes = text.split(/\s*,\s*|\s+/).map((part) => notNegative(part, context));
    return dashes.every((value) => value !== undefined) ? dashes : undefined;
}

/** What `paint-order` does not name follows in the usual order. */
function readPaintOrder(text: string): readonly PaintLayer[] | undefined {
    const named = text === 'normal' ? [] : text.split(/\s+/).map(word(...initialStyle.paintOrder));
    if (!named.every((layer) => layer !== undefined)) return undefined;
    return [...new Set([...named, ...initialStyle.paintOrder])];
}
