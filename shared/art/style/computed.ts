import { phrase } from '../../recipe/phrase';
import { type LengthContext, toPixels } from '../frame/length';
import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';
import type { Cascade } from './cascade';
import { initialStyle, properties, type Style } from './properties';
import { writtenValues } from './written';

/** An element's style, and how else its attributes are written: CSS before attribute. */
export interface Computed {
    readonly style: Style;
    /** The winning text of anything that may stand as an attribute or, like `x` or `transform`, as a CSS property. */
    text(name: string): string | undefined;
}

/** Font sizes by word, in px: CSS Fonts 4, section 2.5, with 16 px for `medium`. */
const sizes: ReadonlyMap<string, number> = new Map(
    Object.entries({
        'xx-small': 9,
        'x-small': 10,
        small: 13,
        medium: 16,
        large: 18,
        'x-large': 24,
        'xx-large': 32,
        'xxx-large': 48,
    }),
);

/** Computes an element's style from its attributes, the style sheets and what it takes over from `parent`. */
export function computeStyle(
    element: SvgElement,
    parent: Style,
    cascade: Cascade,
    context: Omit<LengthContext, 'fontSize'>,
    problems: Problems,
): Computed {
    const { written, css } = writtenValues(element, cascade, problems);
    const style: { -readonly [K in keyof Style]: Style[K] } = { ...parent };
    for (const { key, inherited } of properties.values()) if (!inherited) set(style, key, initialStyle[key]);
    const sizeContext = { ...context, fontSize: parent.fontSize };
    style.fontSize = fontSize(written.get('font-size')?.[0], parent.fontSize, sizeContext);
    const lengths: LengthContext = { ...context, fontSize: style.fontSize };
    for (const [name, candidates] of written) {
        const property = properties.get(name);
        if (property === undefined) continue;
        for (const candidate of candidates) {
            const value = keyword(candidate, property, parent) ?? property.read(candidate, lengths);
            if (value !== undefined) {
                set(style, property.key, value);
                break;
            }
            const message = phrase`${name} "${candidate.slice(0, 40)}" on <${element.name}> is not understood and counts as not set.`;
            problems.add('unreadable', name, message, element.offset);
        }
    }
    return { style, text: (name) => css.get(name) ?? element.attributes[name] };
}

function keyword(text: string, { key, inherited }: { key: keyof Style; inherited: boolean }, parent: Style): unknown {
    switch (text) {
        case 'inherit':
            return parent[key];
        case 'initial':
            return initialStyle[key];
        case 'unset':
        case 'revert':
        case 'revert-layer':
            return inherited ? parent[key] : initialStyle[key];
        default:
            return undefined;
    }
}

function set(style: { -readonly [K in keyof Style]: Style[K] }, key: keyof Style, value: unknown): void {
    (style as Record<keyof Style, unknown>)[key] = value;
}

function fontSize(text: string | undefined, inherited: number, context: LengthContext): number {
    if (text === undefined || text === 'inherit') return inherited;
    if (text === 'larger') return inherited * 1.2;
    if (text === 'smaller') return inherited / 1.2;
    if (text.endsWith('%')) return (inherited * Number.parseFloat(text)) / 100 || inherited;
    const size = sizes.get(text) ?? toPixels(text, 'diagonal', context);
    return size !== undefined && size >= 0 ? size : inherited;
}
