import { AstUtils, type LangiumDocument } from 'langium';
import { ordersOf, type WantedPieces } from '../../language/lowering/orders';
import type { Recipe } from '../../shared/recipe/recipe';
import type { WeekAsked } from '../../shared/week/make-week';
import { type OpenOrder, openOrders } from '../../shared/week/open-orders';
import type { WeekJob } from '../engine/jobs';
import { allRecipes } from '../review/table-jobs';
import type { Workshop } from '../workshop/workshop';

/** All that is ordered in these files and not made yet, in one book; without any order, every recipe for the pieces that it makes. */
export function weekJob<What extends WeekJob['do']>(
    what: What,
    workshop: Workshop,
    documents: readonly LangiumDocument[],
    asked: WeekAsked,
): WeekJob & { readonly do: What } {
    const wanted = documents.flatMap(ordersOf).flatMap((order) => orderOf(workshop, order));
    if (wanted.length === 0) {
        const known = allRecipes(workshop).filter(({ document }) => documents.includes(document));
        return { do: what, ...asked, entries: known.map(({ recipe }) => ({ recipe })) };
    }
    const entries = openOrders(wanted).map(({ recipe, left, whom, ordered, due }) => ({
        recipe: { ...recipe, make: left },
        ordered,
        ...(whom === undefined ? {} : { for: whom }),
        ...(due === undefined ? {} : { due }),
    }));
    return { do: what, ...asked, entries };
}

function orderOf(workshop: Workshop, { recipe: node, ...order }: WantedPieces): (OpenOrder & { readonly recipe: Recipe })[] {
    const recipe = workshop.recipe(AstUtils.getDocument(node), node.name);
    return recipe === undefined ? [] : [{ ...order, recipe }];
}
