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
export function withStrips(sheet: CouponSheet, material: Sheet, laser: Laser, count: number): CouponSheet | { problem: string } {
    const thickness = material.thickness?.value;
    if (thickness === undefined)
        return { problem: `How thick ${material.name} is, is not known: no strips can be cut out of it.` };
    const half = solveCut(cutLawOf([], laser, material.wood), laser, { thickness, sure: 0.5 });
    if (half === undefined || !half.reached || half.speed <= SLOWEST_CUT)
        return { problem: `${laser.name} can hardly cut ${material.name}: no strips are laid out.` };
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
    const step = DRAWN + BETWEEN;
    const inFlight = Math.max(1, Math.floor((sheet.height - BETWEEN) / step));
    const labels: Float64Array[] = [];
    const strips = rungs.map((rung, i): KerfStrip => {
        const number = sheet.squares.length + i + 1;
        const x = sheet.width + BETWEEN + Math.floor(i / inFlight) * (LENGTH + BETWEEN);
        const y = BETWEEN / 2 + (i % inFlight) * step;
        labels.push(...strokes(`${number}`, x + (LENGTH - textWidth(`${number}`, LABEL)) / 2, y + (DRAWN - LABEL) / 2, LABEL));
        return { ...rung, number, x, y, length: LENGTH, drawn: DRAWN };
    });
    return {
        ...sheet,
        strips,
        labels: [...sheet.labels, ...labels],
        width: Math.max(...strips.map(({ x }) => x + LENGTH + BETWEEN / 2)),
        height: Math.max(sheet.height, ...strips.map(({ y }) => y + DRAWN + BETWEEN / 2)),
    };
}
