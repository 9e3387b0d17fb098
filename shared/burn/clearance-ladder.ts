import { type Message, phrase } from '../recipe/phrase';
import type { Coupon, Laser, Sheet } from '../recipe/stock';
import { lineWidth } from './beam';
import type { Rung } from './coupon-rungs';
import type { CouponSheet } from './coupon-sheet';
import { cutLawOf, cutRowsOf } from './cut-law';
import { guessLaw } from './guess';
import { numberOn, placesBeside } from './kerf-ladder';
import type { Plug } from './kerf-strip';
import { type KerfBeam, type KerfWidth, kerfRowsOf, kerfWidth } from './kerf-width';
import { wattsOf } from './power-curve';
import { SLOWEST_CUT, solveCut } from './solve-cut';
import { USUAL_SURE } from './surely';

/** Of the opening, mm: long enough to hold, short enough for an offcut. */
const LENGTH = 24;
const WIDTH = 12;
/** Plugs that are drawn this much beyond what the kerf may be are tried too: char and the give of wood add to it, mm. @commonPractice */
const BEYOND = 0.02;
/** Sizes are round to this, mm: finer steps are not felt. */
const FINEST = 0.01;

/**
 * A coupon with a clearance ladder beside its squares and strips; or why there can be none. Settings are those with which the sheet is
 * surely parted by the cuts that were tried of it, else by the estimate. O(plugs).
 */
export function withLadder(
    sheet: CouponSheet,
    material: Sheet,
    laser: Laser,
    { plugs: count, measured }: { readonly plugs: number; readonly measured?: Coupon | undefined },
): CouponSheet | { problem: Message } {
    const thickness = material.thickness;
    if (thickness === undefined)
        return { problem: phrase`How thick ${material.name} is, is not known: no plugs can be cut out of it.` };
    const law = cutLawOf(cutRowsOf(measured, laser, thickness.value), laser, material.wood);
    const cut = solveCut(law, laser, { thickness: thickness.value + thickness.tolerance, sure: USUAL_SURE });
    if (cut === undefined || !cut.reached || cut.speed <= SLOWEST_CUT) {
        const cure = law.guess ? '. Try cuts first, such as strips, and write them into the coupon' : '';
        return { problem: phrase`${laser.name} does not surely cut ${material.name}: no plugs are laid out${cure}.` };
    }
    const { power, speed, passes, powerRatio = 1 } = cut;
    const settings: Rung = { power, powerRatio, speed, passes };
    const beam = { spot: lineWidth(laser), threshold: guessLaw(material.wood, laser).threshold };
    const sizes = stepsOf(kerfWidth(beam, kerfRowsOf(measured, laser), settings), count);
    const room = 2 * sizes.at(-1)!;
    const { places, ...size } = placesBeside(sheet, { count: count + 1, length: LENGTH + room, width: WIDTH + room });
    const [first, ...others] = places;
    const from = sheet.squares.length + (sheet.strips?.length ?? 0) + 1;
    const plugs = sizes.map((larger, i): Plug => {
        return { number: from + i, ...others[i]!, length: LENGTH + 2 * larger, width: WIDTH + 2 * larger, larger };
    });
    const ladder = { settings, opening: { ...first!, length: LENGTH, width: WIDTH }, plugs };
    return { ...sheet, ...size, ladder, labels: [...sheet.labels, ...plugs.flatMap(numberOn)] };
}

/**
 * Even steps over what the kerf may be in the middle of the sheet: a plug that is drawn so much larger all round just fills its opening,
 * since each edge of both gives half a kerf away (own derivation).
 */
function stepsOf({ face, back }: KerfWidth, count: number): number[] {
    const round = (length: number): number => FINEST * Math.round(length / FINEST);
    const low = Math.max(FINEST, round((face.low + back.low) / 2 - BEYOND));
    const step = Math.max(FINEST, FINEST * Math.ceil(((face.high + back.high) / 2 + BEYOND - low) / (count - 1) / FINEST - 1e-9));
    return Array.from({ length: count }, (_, i) => Number((low + i * step).toFixed(3)));
}

/**
 * How much larger all round than its opening a part may be drawn that still goes in, turned over, mm: the mean of what ladders found,
 * moved by how much wider or narrower the kerf is here than theirs. Undefined without a ladder. O(tests).
 *
 * @param kerf width of the kerf that is planned
 */
export function ladderFit(
    coupon: Coupon | undefined,
    laser: Laser | undefined,
    beam: KerfBeam,
    kerf: KerfWidth,
): number | undefined {
    const rows = kerfRowsOf(coupon, laser);
    const tighter = (coupon?.cuts ?? []).flatMap(({ fits, power, speed, passes, gives }) => {
        const watts = wattsOf(power, laser);
        if (fits === undefined || gives !== 'through' || watts === undefined || !(watts > 0 && speed.value > 0)) return [];
        return [middleOf(kerfWidth(beam, rows, { power: watts, speed: speed.value, passes })) - fits.value];
    });
    if (tighter.length === 0) return undefined;
    return middleOf(kerf) - tighter.reduce((sum, each) => sum + each, 0) / tighter.length;
}

/** Width of a kerf in the middle of the sheet, mm. */
function middleOf({ face, back }: KerfWidth): number {
    return (face.value + back.value) / 2;
}
