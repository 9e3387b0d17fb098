import type { LangiumDocument } from 'langium';
import type { Recipe } from '../../shared/recipe/recipe';
import type { Coupon } from '../../shared/recipe/stock';
import { isCoupon, isFile, isRecipe } from '../generated/ast';
import type { KerfServices } from '../module';
import { recipeOf } from './recipe';
import { shopOf, shopsInSight } from './shop';
import { couponOf } from './stock';

/**
 * The recipes of a linked document as plain data, in the order in which they stand. Never throws:
 * what is broken or not found is absent, and the text's findings say so.
 */
export function lowerFile(document: LangiumDocument, services: KerfServices): Recipe[] {
    const coupons = couponsOf(document, services);
    const [nearest] = shopsInSight(document, services);
    const shop = nearest && shopOf(nearest.shop);
    const file = document.parseResult.value;
    return isFile(file)
        ? file.entries
              .filter(isRecipe)
              .filter(({ name }) => name !== undefined)
              .map((recipe) => recipeOf(recipe, coupons, shop))
        : [];
}

function couponsOf(document: LangiumDocument, services: KerfServices): Coupon[] {
    const seen = [document, ...services.names.UsedFiles.of(document).map((used) => used.document)];
    return seen.flatMap((each) => {
        const file = each?.parseResult.value;
        if (!isFile(file)) return [];
        return file.entries.filter(isCoupon).flatMap((coupon) => couponOf(coupon) ?? []);
    });
}
