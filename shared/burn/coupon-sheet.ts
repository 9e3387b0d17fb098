import type { Interval } from '../quantity/interval';
import type { Laser, Wood } from '../recipe/stock';
import { spotOf } from './beam';
import { doseFor, doseOf } from './dose';
import { guessLaw } from './guess';
import { type DepthLaw, predict } from './law';
import { pitchForSpot } from './pitch';
import { leastPowerOf, settingFor, wattsAt } from './power-curve';
import { runUpSpeed } from './run-up-speed';
import { strokes, textWidth } from './stroked-text';

/** One square of a coupon: place and size in mm, what burns it, and what it may give. */
export interface CouponSquare {
    readonly x: number;
    readonly y: number;
    readonly size: number;
    readonly power: number;
    readonly powerRatio: number;
    readonly speed: number;
    readonly passes: number;
    readonly expected: Interval | undefined;
}

/** The layout of a coupon: columns of power, rows of speed, labels as single strokes to be burnt lightly. */
export interface CouponSheet {
    readonly width: number;
    readonly height: number;
    readonly pitch: number;
    readonly squares: readonly CouponSquare[];
    /** Polylines x0, y0, x1, y1, … in mm. */
    readonly labels: readonly Float64Array[];
    /** For the labels: W and mm/s of a line that marks and does not dig. */
    readonly labelPower: number;
    readonly labelSpeed: number;
}

export interface CouponOptions {
    /** Parts of the laser's power, one a column; four from what just digs at top speed up to nine tenths if absent. */
    readonly powers?: readonly number[];
    /** mm/s, one a row; chosen so that the doses reach from just digging to `deepest` if absent. */
    readonly speeds?: readonly number[];
    readonly pitch?: number;
    /** Passes of the extra row that tells how later passes fade (default 3; 1 leaves it out). */
    readonly passes?: number;
    /** Depth (mm) that the strongest square should give (default 0.8). */
    readonly deepest?: number;
    /** Side of a square (mm, default 8): wide enough for a gauge's foot. */
    readonly square?: number;
}

const LABEL = 3; // mm, height of the labels
const GAP = 3; // mm between squares
const MOST = 20; // columns or rows
const JUST_DIGS = 0.03; // mm

/** The layout for a laser and a wood, or undefined if the laser's power is not known or the options are none. */
export function couponSheet(
    laser: Laser | undefined,
    wood: Wood | undefined,
    options: CouponOptions = {},
): CouponSheet | undefined {
    const full = laser?.power?.value;
    const square = options.square ?? 8;
    const pitch = options.pitch ?? pitchForSpot(spotOf(laser)) ?? 0.1;
    if (full === undefined || !(full > 0 && full < 1e6 && square > 0 && square < 200 && pitch >= 0.005 && pitch < 1e3))
        return undefined;
    const law = guessLaw(wood, laser);
    // Faster than the overtravel lets the head reach, the edges of a square would be burnt deeper than its middle.
    const topSpeed = Math.min(laser?.topSpeed?.value ?? 300, runUpSpeed(laser) ?? Number.POSITIVE_INFINITY);
    const powers = options.powers ?? powersFor(law, laser, pitch, topSpeed);
    const speeds =
        options.speeds ??
        speedsFor(
            law,
            powers.map((part) => wattsAt(laser, part) ?? part * full),
            pitch,
            topSpeed,
            options.deepest ?? 0.8,
        );
    if (!listed(powers, 2) || !listed(speeds, 1e6)) return undefined;

    const extra = options.passes ?? 3;
    const rows = [...speeds.map((speed) => ({ speed, passes: 1 })), ...(extra > 1 ? [{ speed: speeds[0]!, passes: extra }] : [])];
    const names = rows.map(({ speed, passes }) => (passes > 1 ? `${speed} x${passes}` : `${speed}`));
    const left = Math.max(...names.map((name) => textWidth(name, LABEL)), textWidth('mm/s', LABEL)) + GAP;
    const top = LABEL + GAP;
    const labels = [...strokes('mm/s', 0, 0, LABEL)];
    powers.forEach((part, column) => {
        labels.push(...strokes(`${Math.round(part * 1000) / 10}%`, left + column * (square + GAP), 0, LABEL));
    });
    const squares = rows.flatMap(({ speed, passes }, row) => {
        const y = top + row * (square + GAP);
        labels.push(...strokes(names[row]!, 0, y + (square - LABEL) / 2, LABEL));
        return powers.map((part, column): CouponSquare => {
            const power = wattsAt(laser, part) ?? part * full;
            const expected = predict(law, { power, speed, pitch, passes });
            return { x: left + column * (square + GAP), y, size: square, power, powerRatio: part, speed, passes, expected };
        });
    });
    const widest = Math.max(square, textWidth('88.8%', LABEL));
    return {
        width: left + (powers.length - 1) * (square + GAP) + widest,
        height: top + rows.length * (square + GAP) - GAP,
        pitch,
        squares,
        labels,
        ...labelSettings(law, laser!, full, topSpeed),
    };
}

function listed(values: readonly number[], most: number): boolean {
    return values.length >= 1 && values.length <= MOST && values.every((value) => value > 0 && value <= most);
}

/** Four settings in even steps of whole per cent: the lowest just digs at top speed. */
function powersFor(law: DepthLaw, laser: Laser | undefined, pitch: number, topSpeed: number): number[] {
    const settingOf = (watts: number): number => settingFor(laser, watts) ?? 0;
    const digging = settingOf(doseFor(law, JUST_DIGS, 1) * topSpeed * pitch);
    const least = Math.ceil(100 * settingOf(leastPowerOf(laser) ?? 0) - 1e-9) / 100;
    const low = Math.min(0.5, Math.max(0.1, digging, least));
    return Array.from({ length: 4 }, (_, i) => Math.round(100 * (low + (i * (0.9 - low)) / 3)) / 100);
}

/** Four speeds in even ratios: the weakest square (W) of the fastest row just digs, the strongest of the slowest gives the deepest. */
function speedsFor(law: DepthLaw, watts: readonly number[], pitch: number, topSpeed: number, deepest: number): number[] {
    const slowest = Math.max(...watts) / (doseFor(law, Math.max(deepest, 0.05), 1) * pitch);
    const fastest = Math.min(...watts) / (doseFor(law, JUST_DIGS, 1) * pitch);
    const high = Math.min(fastest, topSpeed);
    const low = Math.min(slowest, high / 2);
    return Array.from({ length: 4 }, (_, i) => Math.min(topSpeed, roundSpeed(high * (low / high) ** (i / 3))));
}

function roundSpeed(speed: number): number {
    return Math.max(1, Number(speed.toPrecision(2)));
}

/** A single line gets its dose from a strip about as wide as the spot; it is held to half above the threshold. */
function labelSettings(law: DepthLaw, laser: Laser, full: number, topSpeed: number): { labelPower: number; labelSpeed: number } {
    const width = spotOf(laser)?.diameter ?? 0.15;
    const labelSpeed = Math.min(100, topSpeed);
    const power = (1.5 * law.threshold) / doseOf({ power: 1, speed: labelSpeed, pitch: width });
    return { labelPower: Math.min(full, Math.max(power, leastPowerOf(laser) ?? 0)), labelSpeed };
}
