import type { Coupon, Laser, Sheet } from '../recipe/stock';
import { fitCoupon } from './fit';
import type { DepthLaw } from './law';
import { pieceSpread } from './piece-spread';
import { type DatedRow, powerByDay, withPower } from './power-by-day';

/**
 * The depth law of a laser on a board as it is on the newest day of its runs: the coupon's squares say how depth follows
 * the dose, and pockets that were measured since say how much power is left. Squares too few to stand alone, or none, are
 * fitted together with the pockets.
 *
 * @param today day for which it is asked, ISO 8601, where one is stated: of what is written of later days nothing counts
 */
export function lawOfDay(
    coupon: Coupon | undefined,
    laser: Laser | undefined,
    sheet: Sheet | undefined,
    runs: readonly DatedRow[],
    today?: string,
): DepthLaw {
    const start = startOf(coupon, laser, sheet)?.date;
    const since = runs.filter(({ date }) => isWithin(date, start, today)).toSorted(byDay);
    const own = fitCoupon(coupon, laser, sheet?.wood);
    if (since.length === 0) return forPieces(own, sheet);
    const law =
        own.degreesOfFreedom === undefined
            ? fitCoupon(
                  coupon,
                  laser,
                  sheet?.wood,
                  since.map(({ row }) => row),
              )
            : own;
    const power = powerByDay(law, since, law === own ? dayOfLaw(coupon, start, since[0]!.date) : undefined, today);
    return forPieces(power === undefined ? law : withPower(law, power), sheet);
}

/** A guess is wide enough for all boards of a wood as it is. */
function forPieces(law: DepthLaw, sheet: Sheet | undefined): DepthLaw {
    return law.guess ? law : { ...law, pieces: pieceSpread(sheet?.varies?.value, law.power?.days) };
}

/** The day on which a coupon says what the power was; undefined where that was before the laser or the board changed. */
function dayOfLaw(coupon: Coupon | undefined, start: string | undefined, first: string): string | undefined {
    if (start === undefined) return first; // nobody says when: at the latest then
    return coupon?.burnt?.value === start ? start : undefined;
}

/** Something after which a laser may burn otherwise on a board, so that what was measured before says nothing of it. */
export interface Fresh {
    readonly date: string;
    readonly event: 'burnt' | 'serviced' | 'bought';
}

/** The last of them that is written. A day counts as after it: the coupon is burnt first. Days compare as text. */
export function startOf(coupon: Coupon | undefined, laser: Laser | undefined, sheet: Sheet | undefined): Fresh | undefined {
    const events: Fresh[] = [
        ...(coupon?.burnt === undefined ? [] : [{ date: coupon.burnt.value, event: 'burnt' as const }]),
        ...(laser?.serviced === undefined ? [] : [{ date: laser.serviced.value, event: 'serviced' as const }]),
        ...(sheet?.bought === undefined ? [] : [{ date: sheet.bought.value, event: 'bought' as const }]),
    ];
    return events.reduce<Fresh | undefined>(
        (last, each) => (last === undefined || each.date > last.date ? each : last),
        undefined,
    );
}

/** Days are written alike, so that they compare as text. */
function isWithin(date: string, from: string | undefined, to: string | undefined): boolean {
    return (from === undefined || date >= from) && (to === undefined || date <= to);
}

function byDay(a: DatedRow, b: DatedRow): number {
    return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
