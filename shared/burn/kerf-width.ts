import type { Interval } from '../quantity/interval';
import type { Quantity } from '../quantity/quantity';
import type { Coupon, Laser } from '../recipe/stock';
import type { CutSettings } from './cut-energy';
import { coverageFactor } from './distributions';
import { sigmaOf } from './dose';
import { lineDose } from './outline-pass';
import { wattsOf } from './power-curve';

/** How wide a cut is on the face and on the back, mm: 95 % of such cuts lie in the intervals. */
export interface KerfWidth {
    readonly face: Interval;
    readonly back: Interval;
    readonly basis: 'written' | 'measured' | 'guess';
    /** Cut tests of which the width on the face was measured. */
    readonly tests: number;
}

/** What the guess goes by: diameter of the spot on the face (1/e2, mm) and the dose at which this wood begins to give way (J/mm2). */
export interface KerfBeam {
    readonly spot: number;
    readonly threshold: number;
}

/** A cut whose kerf was measured; widths and their reading errors (one standard deviation), mm. */
export interface KerfRow extends CutSettings {
    readonly face: number;
    readonly reading: number;
    readonly back?: number;
    readonly backReading?: number;
}

/** What a guessed width may be off by, one standard deviation of the log: 95 % lie within 30 % (own estimate). */
const GUESS_SPREAD = 0.13;
/** The back against the face, and one deviation of its log: usual cuts are wedges that narrow. @commonPractice */
const USUAL_BACK = 0.72;
const BACK_SPREAD = 0.2;
/** How much widths differ from cut to cut, one deviation of the log, and for how many measured ones that usual value counts. @commonPractice */
const USUAL_SPREAD = 0.05;
const USUAL_WEIGHT = 10;
/** Reading error of a calliper where none is written, mm. @commonPractice */
const CALLIPER = 0.015;
/** A line that just marks is about half as wide as the spot; no lit cut is narrower. */
const NARROWEST = 0.5;

/**
 * Width (mm) on the face over which a line of a Gaussian beam stays above the threshold: d · √(ln(F0 / Fth) / 2), F0 the dose in
 * its middle, all passes. (Liu, Simple technique for measurements of pulsed Gaussian-beam spot sizes, Opt. Lett. 7, 196, 1982:
 * D² = 2 w0² ln(F0 / Fth); from memory, here along a line, whose profile across is the same.)
 */
export function beamWidth({ spot, threshold }: KerfBeam, { power, speed, passes }: CutSettings): number {
    const logs = Math.log(lineDose((passes * power) / speed, sigmaOf(spot)) / threshold);
    return spot * Math.max(NARROWEST, logs > 0 ? Math.sqrt(logs / 2) : 0);
}

/** The measured kerfs of a coupon. */
export function kerfRowsOf(coupon: Coupon | undefined, laser: Laser | undefined): KerfRow[] {
    return (coupon?.cuts ?? []).flatMap(({ kerf, back, power, speed, passes }) => {
        const watts = wattsOf(power, laser);
        if (!isWidth(kerf) || watts === undefined || !(watts > 0 && speed.value > 0 && passes >= 1)) return [];
        return [
            {
                power: watts,
                speed: speed.value,
                passes,
                face: kerf.value,
                reading: readingOf(kerf),
                ...(isWidth(back) && { back: back.value, backReading: readingOf(back) }),
            },
        ];
    });
}

function isWidth(width: Quantity | undefined): width is Quantity {
    return width !== undefined && width.value > 1e-3 && width.value < 20;
}

function readingOf({ tolerance }: Quantity): number {
    return tolerance > 0 ? tolerance / 1.96 : CALLIPER;
}

/**
 * Width of the next cut with these settings. What was measured corrects the beam's own width by its mean ratio, so that a test at
 * another speed still counts; without any it is the beam's, with its honest interval. `written` goes before both.
 */
export function kerfWidth(beam: KerfBeam, rows: readonly KerfRow[], settings: CutSettings, written?: Quantity): KerfWidth {
    const backs = rows.flatMap(({ face, back, reading, backReading = CALLIPER }) =>
        back === undefined ? [] : [{ log: Math.log(back / face), error: Math.hypot(reading / face, backReading / back) }],
    );
    const narrowing = meanOf(backs, { log: Math.log(USUAL_BACK), spread: BACK_SPREAD });
    const backOf = (face: Interval): Interval => {
        const spread = Math.hypot(narrowing.spread, Math.log(face.high / face.low) / 2);
        return within(face.value * Math.exp(narrowing.log), spread);
    };
    if (isWidth(written)) {
        const half = written.tolerance > 0 ? written.tolerance : 1.96 * CALLIPER;
        const face = { value: written.value, low: Math.max(1e-3, written.value - half), high: written.value + half };
        return { face, back: backOf(face), basis: 'written', tests: rows.length };
    }
    const logs = rows.map((row) => ({ log: Math.log(row.face / beamWidth(beam, row)), error: row.reading / row.face }));
    const off = meanOf(logs, { log: 0, spread: GUESS_SPREAD });
    const face = within(beamWidth(beam, settings) * Math.exp(off.log), off.spread);
    return { face, back: backOf(face), basis: rows.length > 0 ? 'measured' : 'guess', tests: rows.length };
}

/** Widths are rounded to this, mm: no finer than anybody measures, and half of it lies on the grid of the drawing. */
const FINENESS = 0.002;

/** Half of a 95 % interval of the log makes one of the width. */
function within(exact: number, halfLog: number): Interval {
    const value = Math.max(FINENESS, Math.round(exact / FINENESS) * FINENESS);
    return { value, low: value * Math.exp(-halfLog), high: value * Math.exp(halfLog) };
}

/** Mean of logs, and half of the 95 % interval of the next one; what is usual where there are none. */
function meanOf(
    logs: readonly { readonly log: number; readonly error: number }[],
    usual: { readonly log: number; readonly spread: number },
): { readonly log: number; readonly spread: number } {
    const count = logs.length;
    if (count === 0) return { log: usual.log, spread: coverageFactor(0.95, undefined) * usual.spread };
    const mean = logs.reduce((sum, { log }) => sum + log, 0) / count;
    const squares = logs.reduce((sum, { log }) => sum + (log - mean) ** 2, 0);
    const reading = logs.reduce((sum, { error }) => sum + error ** 2, 0) / count;
    const degreesOfFreedom = USUAL_WEIGHT + count - 1;
    const variance = (USUAL_WEIGHT * (USUAL_SPREAD ** 2 + reading) + squares) / degreesOfFreedom;
    const spread = coverageFactor(0.95, degreesOfFreedom) * Math.sqrt(Math.max(0, variance - reading) + variance / count);
    return { log: mean, spread };
}
