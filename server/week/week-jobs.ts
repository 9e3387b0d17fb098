import { AstUtils, type LangiumDocument } from 'langium';
import { stockOnHand } from '../../language/lowering/on-hand';
import { ordersOf, type WantedPieces } from '../../language/lowering/orders';
import type { Recipe } from '../../shared/recipe/recipe';
import type { WeekAsked } from '../../shared/week/make-week';
import type { CountedStock } from '../../shared/week/on-hand';
import { type OpenOrder, openOrders } from '../../shared/week/open-orders';
import type { WeekJob } from '../engine/jobs';
import { allRecipes, type PlacedRecipe } from '../review/table-jobs';
import type { Workshop } from '../workshop/workshop';

/** All that is ordered in these files and not made yet, in one book; without any order, every recipe for the pieces that it makes. */
export function weekJob<What extends WeekJob['do']>(
    what: What,
    workshop: Workshop,
    documents: readonly LangiumDocument[],
    hours: Omit<WeekAsked, 'stock'>,
): WeekJob & { readonly do: What } {
    const known = allRecipes(workshop);
    const stock = stockOnHand(workshop.services.shared.workspace.LangiumDocuments.all.toArray());
    const asked = { ...hours, stock, spent: spentSince(stock, known) };
    const wanted = documents.flatMap(ordersOf).flatMap((order) => orderOf(workshop, order));
    if (wanted.length === 0) {
        const own = known.filter(({ document }) => documents.includes(document));
        return { do: what, ...asked, entries: own.map(({ recipe }) => ({ recipe })) };
    }
    const entries = openOrders(wanted).map(({ recipe, left, whom, ordered, due }) => ({
        recipe: { ...recipe, make: left },
        ordered,
        ...(whom === undefined ? {} : { for: whom }),
        ...(due === undefined ? {} : { due }),
    }));
    return { do: what, ...asked, entries };
}

/** What was begun after the first count. */
function spentSince(stock: readonly CountedStock[], known: readonly PlacedRecipe[]): WeekJob['spent'] {
    const [first] = stock.map(({ counted }) => counted).sort();
    if (first === undefined) return [];
    return known.flatMap(({ recipe }) =>
        recipe.runs.flatMap(({ date, made = 0, spoiled = 0 }) =>
            date.value > first && made + spoiled > 0 ? [{ recipe: { ...recipe, make: made + spoiled }, date: date.value }] : [],
        ),
    );
}

function orderOf(workshop: Workshop, { recipe: node, ...order }: WantedPieces): (OpenOrder & { readonly recipe: Recipe })[] {
    const recipe = workshop.recipe(AstUtils.getDocument(node), node.name);
    return recipe === undefined ? [] : [{ ...order, recipe }];
}
