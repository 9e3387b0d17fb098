/** What relative lengths are measured against, in user units (CSS px before any transform). */
export interface LengthContext {
    /** Width and height of the nearest viewport. */
    readonly width: number;
    readonly height: number;
    readonly fontSize: number;
    readonly rootFontSize: number;
}

export type Axis = 'x' | 'y' | 'diagonal';

/** CSS px in each absolute unit: CSS Values and Units 3, section 6.2. */
const pixels: ReadonlyMap<string, number> = new Map(
    Object.entries({
        '': 1,
        px: 1,
        in: 96,
        cm: 96 / 2.54,
        mm: 96 / 25.4,
        q: 96 / 101.6,
        pt: 96 / 72,
        pc: 16,
    }),
);

export const millimetresPerPixel = 25.4 / 96;

const written = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(%|[a-z]*)\s*$/i;

/** Characters; the expression above may take the square of them. */
const longest = 200;

/** A length as written: its number and its unit in lower case. Undefined if it is not one; `calc()` is not. */
export function splitLength(text: string): { readonly number: number; readonly unit: string } | undefined {
    if (text.length > longest) return undefined;
    const match = written.exec(text);
    if (match === null) return undefined;
    const number = Number(match[1]);
    return Number.isFinite(number) ? { number, unit: match[2]!.toLowerCase() } : undefined;
}

/** Whether the length is written in a unit that a ruler knows: neither px nor a bare number nor relative. */
export function isPhysical(text: string): boolean {
    const unit = splitLength(text)?.unit;
    return unit !== undefined && unit !== '' && unit !== 'px' && pixels.get(unit) !== undefined;
}

/** A length in user units; percentages are of the viewport's width, height or (SVG's) diagonal over √2. */
export function toPixels(text: string, axis: Axis, context: LengthContext): number | undefined {
    const length = splitLength(text);
    if (length === undefined) return undefined;
    const { number, unit } = length;
    const factor = pixels.get(unit);
    if (factor !== undefined) return number * factor;
    switch (unit) {
        case '%':
            return (number / 100) * extent(axis, context);
        case 'em':
            return number * context.fontSize;
        case 'rem':
            return number * context.rootFontSize;
        // Half an em is what CSS prescribes where a font's own measure is not at hand.
        case 'ex':
        case 'ch':
            return (number * context.fontSize) / 2;
        case 'vw':
            return (number / 100) * context.width;
        case 'vh':
            return (number / 100) * context.height;
        case 'vmin':
            return (number / 100) * Math.min(context.width, context.height);
        case 'vmax':
            return (number / 100) * Math.max(context.width, context.height);
        default:
            return undefined;
    }
}

function extent(axis: Axis, { width, height }: LengthContext): number {
    return axis === 'x' ? width : axis === 'y' ? height : Math.hypot(width, height) / Math.SQRT2;
}
