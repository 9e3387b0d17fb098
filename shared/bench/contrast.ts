import { differenceCiede2000, formatHex, interpolate, parse } from 'culori';

const difference = differenceCiede2000();

/**
 * Below this CIEDE2000 difference a figure hardly shows against its ground. Own judgement, no
 * source: about 1 is just seen side by side on flat colour, but one board of a wood differs by
 * several from the next, and grain breaks up an edge.
 */
export const hardlyShows = 8;

/**
 * How different two CSS colours look: CIEDE2000 (CIE 142:2001; Sharma, Wu and Dalal, 2005), under
 * D65. Undefined when one of them is no colour.
 */
export function contrast(a: string, b: string): number | undefined {
    const first = parse(a);
    const second = parse(b);
    if (first === undefined || second === undefined) return undefined;
    const value = difference(first, second);
    return Number.isFinite(value) ? value : undefined;
}

/**
 * The colour a part of the way from one to another, mixed as light is: a tone between bare and
 * burnt wood, or resin that lets the wood through. The first colour where one of them is none.
 */
export function blend(from: string, to: string, part: number): string {
    if (parse(from) === undefined || parse(to) === undefined || Number.isNaN(part)) return from;
    return formatHex(interpolate([from, to], 'lrgb')(Math.min(1, Math.max(0, part)))) ?? from;
}
