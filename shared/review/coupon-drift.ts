import { type Drift, type DriftPoint, driftOf } from '../burn/drift';
import { fitCoupon } from '../burn/fit';
import { predict } from '../burn/law';
import { rowsOf, usable } from '../burn/rows';
import { datedRows } from '../burn/run-rows';
import { daysSince1970 } from '../quantity/calendar';
import type { Recipe } from '../recipe/recipe';
import type { Sheet } from '../recipe/stock';

/** How what was burnt later compares with what a coupon foretells. */
export interface CouponDrift {
    readonly sheet: string;
    readonly laser: string;
    /** The day of the coupon; absent where it is not written, and then nothing can be said. */
    readonly burnt?: string;
    /** Measured over foretold: the coupon's own squares on its day, and every run since. */
    readonly drift: Drift;
    /** Days of runs since the coupon. */
    readonly later: number;
    /** What happened since: the laser was serviced, the board was bought. */
    readonly since: readonly string[];
}

/** Shallower depths are mostly the gauge's own error, mm (own choice). */
const shallowest = 0.05;

/** What all runs in sight, of whatever recipe, measured on the recipe's laser in its boards and veneers. */
export function couponDrifts(recipe: Recipe): CouponDrift[] {
    const sheets = new Map(recipe.blanks.flatMap(({ sheet }) => (sheet === undefined ? [] : [[sheet.name, sheet] as const])));
    return [...sheets.values()].flatMap((sheet) => driftOn(sheet, recipe) ?? []);
}

function driftOn(sheet: Sheet, recipe: Recipe): CouponDrift | undefined {
    const { laser } = recipe;
    const coupon = recipe.coupons.find((each) => each.sheet === sheet.name && each.laser === laser?.name);
    if (coupon === undefined || laser === undefined) return undefined;
    const names = { sheet: sheet.name, laser: laser.name };
    const burnt = coupon.burnt?.value;
    if (burnt === undefined) return { ...names, drift: driftOf([]), later: 0, since: [] };
    // The coupon alone: a fit that the runs count in would foretell them too well.
    const law = fitCoupon(coupon, laser, sheet.wood);
    const own = law.rows.flatMap(({ depth, fitted }) => pointOf(burnt, depth, fitted));
    const runs = datedRows(recipe, sheet.name).filter(({ date, row }) => date >= burnt && usable(row));
    const since = runs.flatMap(({ date, row }) => pointOf(date, row.depth, predict(law, row)?.value));
    const points = law.guess || rowsOf(coupon, laser).rows.length === 0 ? [] : [...own, ...since];
    return {
        ...names,
        burnt,
        drift: driftOf(points),
        later: new Set(since.map(({ day }) => day)).size,
        since: [
            ...(laser.serviced !== undefined && laser.serviced.value > burnt
                ? [`${laser.name} was serviced on ${laser.serviced.value}`]
                : []),
            ...(sheet.bought !== undefined && sheet.bought.value > burnt
                ? [`${sheet.name} was bought on ${sheet.bought.value}`]
                : []),
        ],
    };
}

function pointOf(date: string, depth: number, expected: number | undefined): DriftPoint[] {
    if (expected === undefined || expected < shallowest) return [];
    const day = daysSince1970(date);
    return day === undefined ? [] : [{ day, ratio: depth / expected }];
}
