import { fitCoupon } from '../burn/fit';
import type { DepthLaw } from '../burn/law';
import { runRows } from '../burn/run-rows';
import type { Recipe } from '../recipe/recipe';
import type { Sheet } from '../recipe/stock';
import { contentKey } from './content-key';
import type { Memo } from './memo';

/** The depth law of the recipe's laser on a sheet: from its coupon and the recipe's runs, or a guess from the wood's density. */
export function depthLaw(recipe: Recipe, sheet: Sheet | undefined, memo: Memo): DepthLaw {
    const { laser } = recipe;
    const coupon = recipe.coupons.find((candidate) => candidate.sheet === sheet?.name && candidate.laser === laser?.name);
    const runs = runRows(recipe, sheet);
    return memo.get('depth-law', contentKey(coupon, laser, sheet?.wood, runs), () => fitCoupon(coupon, laser, sheet?.wood, runs));
}
