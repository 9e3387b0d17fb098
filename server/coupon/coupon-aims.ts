import { couponOf } from '../../language/lowering/stock';
import type { CouponAims, CouponOptions } from '../../shared/burn/coupon-sheet';
import { type Message, phrase } from '../../shared/recipe/phrase';
import { allRecipes } from '../review/table-jobs';
import type { Workshop } from '../workshop/workshop';
import type { CouponStock } from './find-stock';

/**
 * What the recipes of all open files ask of a coupon; in words why nothing.
 * @param last number of the square behind which the next ones come
 */
export async function chosenOptions(
    workshop: Workshop,
    stock: CouponStock,
    last: number,
): Promise<Pick<CouponOptions, 'aims' | 'first' | 'measured'> | { readonly problem: Message }> {
    const [sheet, laser] = [stock.sheet.name, stock.laser.name];
    const recipes = allRecipes(workshop).map(({ recipe }) => recipe);
    const asking = recipes.filter(
        (recipe) => recipe.laser?.name === laser && recipe.blanks.some((blank) => blank.sheet?.name === sheet),
    );
    const answers = await Promise.all(asking.map((recipe) => workshop.ask({ do: 'aims', recipe, sheet, laser })));
    const found = answers.filter((answer): answer is CouponAims => answer !== null);
    const [one] = found;
    if (one === undefined)
        return {
            problem: phrase`No recipe here engraves ${sheet} on ${laser} to a depth, so there is nothing to choose squares for. Burn the usual ladder instead.`,
        };
    const measured = stock.coupon && couponOf(stock.coupon);
    return {
        aims: { law: one.law, aims: found.flatMap(({ aims }) => aims) },
        first: last + 1,
        ...(measured !== undefined && { measured }),
    };
}
