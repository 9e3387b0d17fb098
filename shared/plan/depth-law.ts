import { type CutLaw, cutLawOf, cutRowsOf } from '../burn/cut-law';
import type { DepthLaw } from '../burn/law';
import { lawOfDay } from '../burn/law-of-day';
import { couponFor, datedRows } from '../burn/run-rows';
import type { Recipe } from '../recipe/recipe';
import type { Sheet } from '../recipe/stock';
import { contentKey } from './content-key';
import type { Memo } from './memo';

/**
 * The depth law of the recipe's laser on a sheet: from its coupon and the power that all runs in sight say is there, or
 * a guess from the wood's density.
 */
export function depthLaw(recipe: Recipe, sheet: Sheet | undefined, memo: Memo): DepthLaw {
    const { laser, today } = recipe;
    const coupon = couponFor(recipe, sheet?.name);
    const runs = datedRows(recipe, sheet?.name);
    const key = contentKey(coupon, laser, sheet?.wood, sheet?.bought, sheet?.varies, runs, today);
    return memo.get('depth-law', key, () => lawOfDay(coupon, laser, sheet, runs, today));
}

/** How likely a cut of a sheet comes through on the recipe's laser: by the cut tests of its coupon, or an estimate. */
export function cutLaw(recipe: Recipe, sheet: Sheet | undefined, memo: Memo): CutLaw {
    const { laser } = recipe;
    const rows = cutRowsOf(couponFor(recipe, sheet?.name), laser, sheet?.thickness?.value);
    return memo.get('cut-law', contentKey(rows, laser, sheet?.wood), () => cutLawOf(rows, laser, sheet?.wood));
}
