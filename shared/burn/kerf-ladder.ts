import { type Message, phrase } from '../recipe/phrase';
import type { Laser, Sheet } from '../recipe/stock';
import type { Rung } from './coupon-rungs';
import type { CouponSheet } from './coupon-sheet';
import { cutLawOf } from './cut-law';
import type { KerfStrip } from './kerf-strip';
import { SLOWEST_CUT, solveCut } from './solve-cut';
import { strokes, textWidth } from './stroked-text';

const LENGTH = 24; // mm
const DRAWN = 6; // mm
/** Waste between strips, which has to stay in one piece. @commonPractice */
const BETWEEN = 4; // mm
const LABEL = 3; // mm
/** Speeds of the gentlest and the strongest strip against the one that comes through half of the time. @commonPractice */
const GENTLEST = 1.3;
const STRONGEST = 1 / 2.2;

/**
 * A coupon with strips to cut out beside its squares, from the least energy to the most around what the sheet's thickness takes by the
 * estimate of cuts; or why there can be none. O(strips).
 */
export function withStrips(sheet: CouponSheet, material: Sheet, laser: Laser, count: number): CouponSheet | { problem: Message } {
    const thickness = material.thickness?.value;
    if (thickness === undefined)
        return { problem: phrase`How thick ${material.name} is, is not known: no strips can be cut out of it.` };
    const half = solveCut(cutLawOf([], laser, material.wood), laser, { thickness, sure: 0.5 });
    if (half === undefined || !half.reached || half.speed <= SLOWEST_CUT)
        return { problem: phrase`${laser.name} can hardly cut ${material.name}: no strips are laid out.` };
    const { power, passes, powerRatio = 1 } = half;
    const speeds = Array.from({ length: count }, (_, k) =>
        Number((half.speed * GENTLEST * (STRONGEST / GENTLEST) ** (k / (count - 1))).toPrecision(2)),
    );
    const top = laser.topSpeed?.value ?? Number.POSITIVE_INFINITY;
    const possible = [...new Set(speeds.map((speed) => Math.min(top, Math.max(SLOWEST_CUT, speed))))];
    return beside(
        sheet,
        possible.map((speed) => ({ power, powerRatio, speed, passes })),
    );
}

/** The strips to the right of the squares, from top to bottom, in as many flights as they need. */
function beside(sheet: CouponSheet, rungs: readonly Rung[]): CouponSheet {
    const { places, ...size } = placesBeside(sheet, { count: rungs.length, length: LENGTH, width: DRAWN });
    const strips = rungs.map((rung, i): KerfStrip => {
        return { ...rung, number: sheet.squares.length + i + 1, ...places[i]!, length: LENGTH, drawn: DRAWN };
    });
    const labels = strips.flatMap((strip) => numberOn({ ...strip, width: DRAWN }));
    return { ...sheet, ...size, strips, labels: [...sheet.labels, ...labels] };
}

/** Corners of parts of one size that are cut out to the right of a coupon, and how large it is with them; mm. */
export function placesBeside(
    sheet: CouponSheet,
    { count, length, width }: { readonly count: number; readonly length: number; readonly width: number },
): Pick<CouponSheet, 'width' | 'height'> & { readonly places: readonly { readonly x: number; readonly y: number }[] } {
    const step = width + BETWEEN;
    const inFlight = Math.max(1, Math.floor((sheet.height - BETWEEN) / step));
    const places = Array.from({ length: count }, (_, i) => ({
        x: sheet.width + BETWEEN + Math.floor(i / inFlight) * (length + BETWEEN),
        y: BETWEEN / 2 + (i % inFlight) * step,
    }));
    return {
        places,
        width: Math.max(...places.map(({ x }) => x + length + BETWEEN / 2)),
        height: Math.max(sheet.height, ...places.map(({ y }) => y + width + BETWEEN / 2)),
    };
}

/** The number of a part in its middle, as strokes. */
export function numberOn(part: {
    readonly number: number;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
}): Float64Array[] {
    const { number, x, y, length, width } = part;
    return strokes(`${number}`, x + (length - textWidth(`${number}`, LABEL)) / 2, y + (width - LABEL) / 2, LABEL);
}
