import type { LangiumDocument } from 'langium';
import type { Recipe } from '../../shared/recipe/recipe';
import type { Coupon } from '../../shared/recipe/stock';
import { isNewer } from '../edition';
import { type Entry, isCoupon, isFile, isRecipe } from '../generated/ast';
import { KeptOn } from '../kept-on';
import { runsOf } from '../names/runs-in-sight';
import type { KerfServices } from '../services';
import { recipeOf } from './recipe';
import { runOf } from './runs';
import { shopOf, shopsInSight } from './shop';
import { couponOf } from './stock';

const lowered = new KeptOn<object, readonly Recipe[]>();

/**
 * The recipes of a linked document as plain data, in the order in which they stand. Never throws:
 * what is broken or not found is absent, and the text's findings say so. Lowered once a linking.
 */
export function lowerFile(document: LangiumDocument, services: KerfServices): readonly Recipe[] {
    // Relinking replaces the list of references, so it stands for this state of the document.
    const known = lowered.get(document.references);
    if (known !== undefined) return known;
    const recipes = lowerAnew(document, services);
    lowered.set(document.references, recipes);
    return recipes;
}

function lowerAnew(document: LangiumDocument, services: KerfServices): Recipe[] {
    const seen = entriesInSight(document, services);
    const coupons: Coupon[] = seen.filter(isCoupon).flatMap((coupon) => couponOf(coupon) ?? []);
    const [nearest] = shopsInSight(document, services);
    const shop = nearest && shopOf(nearest.shop);
    const file = document.parseResult.value;
    // What a later edition means by its words nobody knows here, so that nothing is planned, shown or written from it.
    return isFile(file) && !isNewer(document)
        ? file.entries
              .filter(isRecipe)
              .filter(({ name }) => name !== undefined)
              .map((recipe) =>
                  recipeOf(
                      recipe,
                      coupons,
                      runsOf(recipe, document, services).flatMap((run) => runOf(run) ?? []),
                      shop,
                  ),
              )
        : [];
}

function entriesInSight(document: LangiumDocument, services: KerfServices): Entry[] {
    const seen = [document, ...services.names.UsedFiles.of(document).map((used) => used.document)];
    return seen.flatMap((each) => {
        const file = each?.parseResult.value;
        return isFile(file) ? file.entries : [];
    });
}
