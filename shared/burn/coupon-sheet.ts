import type { Interval } from '../quantity/interval';
import type { Coupon, Laser, Wood } from '../recipe/stock';
import { spotOf } from './beam';
import { chooseRungs, type Rung, rungLimits } from './coupon-rungs';
import { doseOf } from './dose';
import { guessLaw } from './guess';
import type { ClearanceLadder, KerfStrip } from './kerf-strip';
import { type DepthLaw, predict } from './law';
import { type DepthAim, mostNext, type NarrowedAim, nextSquares } from './next-squares';
import { pitchForSpot } from './pitch';
import { leastPowerOf } from './power-curve';
import { rowsOf } from './rows';
import { runUpSpeed } from './run-up-speed';
import { strokes, textWidth } from './stroked-text';

/** One square of a coupon: the number beside it, place and size in mm, what burns it, and what it may give. */
export interface CouponSquare extends Rung {
    /** Counted from 1, the gentlest. */
    readonly number: number;
    readonly x: number;
    readonly y: number;
    readonly size: number;
    readonly expected: Interval | undefined;
}

/** The layout of a coupon: a ladder of squares by dose, folded where it gets long, each with its number as single strokes to be burnt lightly. */
export interface CouponSheet {
    readonly width: number;
    readonly height: number;
    readonly pitch: number;
    /** The gentlest dose first, all passes counted. */
    readonly squares: readonly CouponSquare[];
    /** Cut out of the sheet to measure its kerf, numbered on from the squares. */
    readonly strips?: readonly KerfStrip[];
    /** An opening and plugs to try in it, numbered on from those. */
    readonly ladder?: ClearanceLadder;
    /** Polylines x0, y0, x1, y1, … in mm. */
    readonly labels: readonly Float64Array[];
    /** For the labels: W and mm/s of a line that marks and does not dig. */
    readonly labelPower: number;
    readonly labelSpeed: number;
    /** For what the squares were chosen; absent of the usual ladder. */
    readonly chosen?: ChosenFor;
}

/** What the squares of a coupon were chosen for, and what they bring. */
export interface ChosenFor {
    readonly aims: readonly NarrowedAim[];
    /** Numbers of the squares that lie apart from what is asked. */
    readonly apart: readonly number[];
    /** They join squares that were burnt or laid out before. */
    readonly joins: boolean;
    /** Nothing is measured yet: they are chosen by the guess. */
    readonly guess: boolean;
}

/** What squares are chosen for. */
export interface CouponAims {
    /** As the recipes that ask have it. */
    readonly law: DepthLaw;
    readonly aims: readonly DepthAim[];
}

export interface CouponOptions {
    /** Squares, 4 to 60 (default 16). Powers and speeds together say themselves how many there are. Chosen ones are 1 to 12 (default 6) at most. */
    readonly rungs?: number;
    /** Parts of the laser's power that take turns; four from what just digs at top speed up to nine tenths if absent. */
    readonly powers?: readonly number[];
    /** mm/s that take turns, power following from the dose; together with powers each is burnt at each. */
    readonly speeds?: readonly number[];
    readonly pitch?: number;
    /** Most passes of the squares that tell how later passes fade (default 3; 1 leaves them out). */
    readonly passes?: number;
    /** Depth (mm) that the strongest squares should give (default 1.2). */
    readonly deepest?: number;
    /** Strips to cut out beside the squares, 2 to 12; none if absent. */
    readonly cuts?: number;
    /** Plugs of a clearance ladder, 3 to 12; none if absent. */
    readonly fits?: number;
    /** Squares are chosen for what recipes ask for, and no ladder is burnt. */
    readonly aims?: CouponAims;
    /** Number of the first square (default 1). */
    readonly first?: number;
    /** What is there of the coupon already: plugs are cut with what its cut tests say, and squares are chosen beside its own. */
    readonly measured?: Coupon;
    /** Side of a square (mm, default 8): wide enough for a gauge's foot. */
    readonly square?: number;
}

const LABEL = 3; // mm, height of the numbers
const GAP = 3; // mm between squares
const BESIDE = 1.5; // mm from a number to its square
const MOST_LISTED = 20; // powers or speeds
const RUNGS_A_FLIGHT = 10; // before the ladder is folded

/** The layout for a laser and a wood, or undefined if the laser's power is not known or the options are not ones that a machine can have. */
export function couponSheet(
    laser: Laser | undefined,
    wood: Wood | undefined,
    options: CouponOptions = {},
): CouponSheet | undefined {
    const full = laser?.power?.value;
    const size = options.square ?? 8;
    const pitch = options.pitch ?? pitchForSpot(spotOf(laser)) ?? 0.1;
    if (laser === undefined || full === undefined || !(full > 0 && full < 1e6)) return undefined;
    if (!(size > 0 && size < 200 && pitch >= 0.005 && pitch < 1e3)) return undefined;
    const { powers, speeds, passes = 3, rungs = 16 } = options;
    if (options.aims !== undefined) return chosenSheet(laser, full, pitch, options.aims, { ...options, square: size });
    if (!listed(powers, 2) || !listed(speeds, 1e6)) return undefined;
    if (!(isCount(passes, 1, 1000) && isCount(rungs, rungLimits.least, rungLimits.most))) return undefined;
    const law = guessLaw(wood, laser);
    const topSpeed = fastestOf(laser);
    const deepest = Math.max(options.deepest ?? 1.2, 0.05);
    const chosen = chooseRungs({ law, laser, pitch, topSpeed, deepest, rungs, passes, powers, speeds });
    if (chosen.length === 0) return undefined;
    return { pitch, ...fold(chosen, size, laser.field, { law, pitch }), ...labelSettings(law, laser, full, topSpeed) };
}

/** Faster than the overtravel lets the head reach, the edges of a square would be burnt deeper than its middle. */
function fastestOf(laser: Laser): number {
    return Math.min(laser.topSpeed?.value ?? 300, runUpSpeed(laser) ?? Number.POSITIVE_INFINITY);
}

/** A sheet of squares that are chosen for what recipes ask for; without a square where none would tell much. */
function chosenSheet(
    laser: Laser,
    full: number,
    pitch: number,
    { law, aims }: CouponAims,
    { measured, rungs, first = 1, square = 8, deepest = 1.2 }: CouponOptions,
): CouponSheet | undefined {
    if (!(isCount(rungs ?? 1, 1, mostNext) && isCount(first, 1, 9999))) return undefined;
    const { rows } = rowsOf(measured, laser);
    const places = rows.map((row) => ({ dose: doseOf(row), passes: row.passes }));
    const found = nextSquares({ law, laser, aims, measured: places, deepest, most: rungs });
    const chosen = found.squares.toSorted((a, b) => doseOf(a) * a.passes - doseOf(b) * b.passes);
    const topSpeed = fastestOf(laser);
    const laid =
        chosen.length === 0
            ? { width: 0, height: 0, squares: [], labels: [] }
            : fold(chosen, square, laser.field, { law, pitch: chosen[0]!.pitch, first });
    return {
        pitch: chosen[0]?.pitch ?? pitch,
        ...laid,
        ...labelSettings(law, laser, full, topSpeed),
        chosen: {
            aims: found.aims,
            apart: chosen.flatMap(({ apart }, i) => (apart ? [first + i] : [])),
            joins: first > 1,
            guess: law.guess,
        },
    };
}

function listed(values: readonly number[] | undefined, most: number): boolean {
    if (values === undefined) return true;
    return values.length >= 1 && values.length <= MOST_LISTED && values.every((value) => value > 0 && value <= most);
}

function isCount(value: number, least: number, most: number): boolean {
    return Number.isInteger(value) && value >= least && value <= most;
}

/** The rungs from top to bottom, in as many flights side by side as the field's height asks for. */
function fold(
    rungs: readonly Rung[],
    size: number,
    field: Laser['field'],
    { law, pitch, first = 1 }: { law: DepthLaw; pitch: number; first?: number },
): Pick<CouponSheet, 'width' | 'height' | 'squares' | 'labels'> {
    const step = size + GAP;
    const numbers = textWidth(`${first + rungs.length - 1}`, LABEL);
    const flight = numbers + BESIDE + size + 2 * GAP;
    const inHeight = Math.max(1, Math.floor(((field?.height.value ?? Number.POSITIVE_INFINITY) + GAP) / step));
    const inWidth = Math.max(1, Math.floor(((field?.width.value ?? Number.POSITIVE_INFINITY) + 2 * GAP) / flight));
    const fewest = Math.ceil(rungs.length / inHeight);
    const flights = Math.max(fewest, Math.min(inWidth, Math.ceil(rungs.length / RUNGS_A_FLIGHT)));
    const inFlight = Math.ceil(rungs.length / flights);
    const labels: Float64Array[] = [];
    const squares = rungs.map((rung, i): CouponSquare => {
        const left = Math.floor(i / inFlight) * flight;
        const y = (i % inFlight) * step;
        const name = `${first + i}`;
        labels.push(...strokes(name, left + numbers - textWidth(name, LABEL), y + (size - LABEL) / 2, LABEL));
        const expected = predict(law, { ...rung, pitch });
        const { powerRatio, power, speed, passes } = rung;
        return { powerRatio, power, speed, passes, number: first + i, x: left + numbers + BESIDE, y, size, expected };
    });
    return {
        width: Math.ceil(rungs.length / inFlight) * flight - 2 * GAP,
        height: inFlight * step - GAP,
        squares,
        labels,
    };
}

/** A single line gets its dose from a strip about as wide as the spot; it is held to half above the threshold. */
function labelSettings(law: DepthLaw, laser: Laser, full: number, topSpeed: number): { labelPower: number; labelSpeed: number } {
    const width = spotOf(laser)?.diameter ?? 0.15;
    const labelSpeed = Math.min(100, topSpeed);
    const power = (1.5 * law.threshold) / doseOf({ power: 1, speed: labelSpeed, pitch: width });
    return { labelPower: Math.min(full, Math.max(power, leastPowerOf(laser) ?? 0)), labelSpeed };
}
