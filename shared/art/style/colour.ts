import {
    converter,
    modeA98,
    modeHsl,
    modeHwb,
    modeLab,
    modeLch,
    modeLrgb,
    modeOklab,
    modeOklch,
    modeP3,
    modeProphoto,
    modeRec2020,
    modeRgb,
    modeXyz50,
    modeXyz65,
    parse,
    useMode,
} from 'culori/fn';

/** sRGB as it is coded, each 0 to 1. */
export interface Colour {
    readonly red: number;
    readonly green: number;
    readonly blue: number;
    readonly alpha: number;
}

export const black: Colour = { red: 0, green: 0, blue: 0, alpha: 1 };

// Only the spaces that CSS Color 4 can name: a reader without the others is half the size.
useMode(modeRgb);
useMode(modeHsl);
useMode(modeHwb);
useMode(modeLab);
useMode(modeLch);
useMode(modeOklab);
useMode(modeOklch);
useMode(modeLrgb);
useMode(modeP3);
useMode(modeA98);
useMode(modeProphoto);
useMode(modeRec2020);
useMode(modeXyz50);
useMode(modeXyz65);
const toRgb = converter('rgb');

/** Characters; no colour takes more, and some ways of reading take the square of them. */
const longest = 200;

/** Any CSS colour, brought into sRGB by cutting off what does not fit. Undefined if it is none. */
export function parseColour(text: string): Colour | undefined {
    if (text.length > longest) return undefined;
    // SVG 1.1 allows a printer's colour after the plain one.
    const plain = text.replace(/\s*icc-color\([^)]*\)\s*$/i, '').trim();
    const parsed = parse(plain.toLowerCase());
    if (parsed === undefined) return undefined;
    const { r, g, b, alpha } = toRgb(parsed);
    return { red: share(r), green: share(g), blue: share(b), alpha: share(alpha ?? 1) };
}

/** `none` as a component counts as 0, and so does what overflowed. */
function share(value: number | undefined): number {
    return value === undefined || Number.isNaN(value) ? 0 : Math.max(0, Math.min(1, value));
}

/** 0 white to 1 black, as a grey print would show it: Rec. 709's weights on the coded values (ITU-R BT.709-6, item 3.2). */
export function darknessOf({ red, green, blue }: Colour): number {
    return 1 - (0.2126 * red + 0.7152 * green + 0.0722 * blue);
}

/** The colour at some opacity as it looks on white, as #rrggbb. */
export function hexOverWhite({ red, green, blue }: Colour, opacity: number): string {
    const digits = [red, green, blue].map((value) => {
        const over = Math.round(255 * (1 - opacity * (1 - value)));
        return over.toString(16).padStart(2, '0');
    });
    return `#${digits.join('')}`;
}
