import { type Message, phrase } from '../../recipe/phrase';
import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';
import type { Cascade } from './cascade';
import { properties } from './properties';

/** CSS properties that are read as attributes by the same name. */
const alsoAttributes = new Set([
    'x',
    'y',
    'cx',
    'cy',
    'r',
    'rx',
    'ry',
    'width',
    'height',
    'd',
    'transform',
    'transform-origin',
    'mask-type',
]);

/** CSS properties that change what is seen, and are not supported. */
const unsupported = new Set(
    'transform-box translate rotate scale offset-path animation animation-name mask-image clip backdrop-filter'.split(' '),
);

const markers = ['marker-start', 'marker-mid', 'marker-end'];

/** How an element's style is written. */
export interface WrittenValues {
    /** For each property its values, the one that counts first; the next does if that turns out not to be valid. */
    readonly written: ReadonlyMap<string, readonly string[]>;
    /** CSS values of what otherwise stands as an attribute. */
    readonly css: ReadonlyMap<string, string>;
}

export function writtenValues(element: SvgElement, cascade: Cascade, problems: Problems): WrittenValues {
    const written = new Map<string, string[]>();
    for (const name in element.attributes) {
        if (properties.has(name) || name === 'font-size') written.set(name, [element.attributes[name]!.trim()]);
    }
    const css = new Map<string, string>();
    for (const { property, value } of cascade.declarations(element)) {
        const refused = whyRefused(property, value, element.name);
        if (refused !== undefined) problems.add('unsupported', refused.what, refused.message, element.offset);
        else if (property === 'marker') for (const name of markers) prefer(written, name, value);
        else if (alsoAttributes.has(property)) css.set(property, property === 'd' ? pathOf(value) : value);
        else if (isRead(property)) prefer(written, property, value);
    }
    return { written, css };
}

function whyRefused(property: string, value: string, name: string): { what: string; message: Message } | undefined {
    if (isRead(property) && property !== 'font-size' && value.includes('var('))
        return { what: 'var()', message: phrase`Variables in styles are not supported; ${property} counts as not set.` };
    if (!isRead(property) && unsupported.has(property) && value !== 'none')
        return { what: property, message: phrase`The style ${property} of <${name}> is not supported and is left out.` };
    return undefined;
}

function isRead(property: string): boolean {
    return properties.has(property) || alsoAttributes.has(property) || property === 'font-size';
}

function pathOf(value: string): string {
    return /^path\(\s*(["'])(.*)\1\s*\)$/s.exec(value)?.[2] ?? 'none';
}

function prefer(written: Map<string, string[]>, name: string, value: string): void {
    const others = written.get(name);
    if (others === undefined) written.set(name, [value]);
    else others.unshift(value);
}
