import { fromBase, toBase } from '../../../../shared/quantity/quantity';
import { showLength } from '../../../../shared/quantity/show';
import type { Size } from './zoom';

/** A place on a blank, mm. */
export interface Point {
    readonly x: number;
    readonly y: number;
}

/** A ruler laid on a blank. */
export interface Ruler {
    readonly blank: string;
    readonly from: Point;
    readonly to: Point;
    /** Its second end still follows the pointer. */
    readonly open: boolean;
}

/** What it measures: `50.0 mm; 40.0 mm across, 30.0 mm down`. */
export function rulerWords({ from, to }: Pick<Ruler, 'from' | 'to'>, unit = 'mm'): string {
    const show = (mm: number) => showLength(Math.abs(mm), unit);
    return `${show(Math.hypot(to.x - from.x, to.y - from.y))}; ${show(to.x - from.x)} across, ${show(to.y - from.y)} down`;
}

/** How far a key moves an end, in the unit of the recipe: plain, with Shift, with Alt. */
const steps = { mm: [1, 10, 0.1], in: [1 / 16, 1, 1 / 64] } as const;

/** The three steps in words. */
export function stepWords(unit: string): string {
    return unit === 'in' ? '1/16 in, with Shift by 1 in, with Alt by 1/64 in' : '1 mm, with Shift by 10 mm, with Alt by 0.1 mm';
}

const ways: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [-1, 0],
    ArrowRight: [1, 0],
    ArrowUp: [0, -1],
    ArrowDown: [0, 1],
};

/** Where an end goes with a key; undefined for a key that is not for it. */
export function movedByKey(
    at: Point,
    { key, shiftKey, altKey }: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey'>,
    unit: string,
    piece: Size,
): Point | undefined {
    const way = Object.hasOwn(ways, key) ? ways[key] : undefined;
    if (way === undefined) return undefined;
    const own = unit === 'in' ? 'in' : 'mm';
    const step = steps[own][shiftKey ? 1 : altKey ? 2 : 0];
    // From mark to mark of the ruler, wherever the pointer had left it.
    const along = (mm: number, sign: number): number => {
        if (sign === 0) return mm;
        const marks = fromBase(mm, own) / step;
        const next = sign > 0 ? Math.floor(marks + 1 + 1e-6) : Math.ceil(marks - 1 - 1e-6);
        return toBase(next * step, own) ?? mm;
    };
    return onPiece({ x: along(at.x, way[0]), y: along(at.y, way[1]) }, piece);
}

/** The nearest place of the blank. */
export function onPiece({ x, y }: Point, { width, height }: Size): Point {
    return { x: Math.min(Math.max(x, 0), width), y: Math.min(Math.max(y, 0), height) };
}

/** As finely as somebody can point at this size, to a tenth, hundredth or thousandth of a millimetre. */
export function pointed({ x, y }: Point, scale: number): Point {
    const perMm = 10 ** Math.min(3, Math.max(1, Math.ceil(Math.log10(Math.max(scale, 1)))));
    return { x: Math.round(x * perMm) / perMm, y: Math.round(y * perMm) / perMm };
}
