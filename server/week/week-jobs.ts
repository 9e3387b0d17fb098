import { AstUtils, type LangiumDocument } from 'langium';
import { stockOnHand } from '../../language/lowering/on-hand';
import { ordersOf, type WantedPieces } from '../../language/lowering/orders';
import type { Recipe } from '../../shared/recipe/recipe';
import type { WeekAsked } from '../../shared/week/make-week';
import type { CountedStock } from '../../shared/week/on-hand';
import { type OpenOrder, openOrders } from '../../shared/week/open-orders';
import type { AskedOrder } from '../../shared/week/week';
import type { WeekJob } from '../engine/jobs';
import { allRecipes, type PlacedRecipe } from '../review/table-jobs';
import type { Workshop } from '../workshop/workshop';

/**
 * All that is ordered in these files and not made yet, in one book; without any order, every recipe for the pieces that it makes.
 * Each recipe is worked out by itself, so that what somebody types comes in between, and every core of the command line is at work.
 */
export async function weekJob<What extends WeekJob['do']>(
    what: What,
    workshop: Workshop,
    documents: readonly LangiumDocument[],
    hours: Omit<WeekAsked, 'stock'>,
): Promise<WeekJob & { readonly do: What }> {
    const known = allRecipes(workshop);
    const stock = stockOnHand(workshop.services.shared.workspace.LangiumDocuments.all.toArray());
    const { start } = hours;
    const spent = Promise.all(
        spentSince(stock, known).map(async ({ recipe, date }) => ({ date, plan: await workshop.ask({ do: 'booked', recipe }) })),
    );
    const entries = Promise.all(
        wantedOf(workshop, documents, known).map(async ({ recipe, ...asked }) => ({
            ...asked,
            plan: await workshop.ask({ do: 'booked', recipe, start }),
        })),
    );
    return { do: what, ...hours, stock, spent: await spent, entries: await entries };
}

type Wanted = AskedOrder & { readonly recipe: Recipe };

function wantedOf(workshop: Workshop, documents: readonly LangiumDocument[], known: readonly PlacedRecipe[]): Wanted[] {
    const wanted = documents.flatMap(ordersOf).flatMap((order) => orderOf(workshop, order));
    if (wanted.length === 0)
        return known.filter(({ document }) => documents.includes(document)).map(({ recipe }) => ({ recipe }));
    return openOrders(wanted).map(({ recipe, left, whom, ordered, due }) => ({
        recipe: { ...recipe, make: left },
        ordered,
        ...(whom === undefined ? {} : { for: whom }),
        ...(due === undefined ? {} : { due }),
    }));
}

/** What was begun after the first count. */
function spentSince(stock: readonly CountedStock[], known: readonly PlacedRecipe[]): { recipe: Recipe; date: string }[] {
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
