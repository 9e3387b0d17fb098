import { compareText } from '../quantity/compare-text';
import type { Recipe } from '../recipe/recipe';

/** Pieces of a recipe that were ordered; days as ISO 8601. */
export interface OpenOrder {
    readonly recipe: Recipe;
    readonly pieces: number;
    readonly ordered: string;
    readonly due?: string;
    readonly whom?: string;
    readonly isDelivered: boolean;
}

/**
 * What is still to be made of each order that was not delivered. What runs say they made since an order's day goes to the order of
 * their recipe that is due first; orders that were delivered have had their part of it.
 */
export function openOrders<Each extends OpenOrder>(orders: readonly Each[]): (Each & { readonly left: number })[] {
    const left = new Map<Each, number>(orders.map((order) => [order, order.pieces]));
    const byDue = orders.toSorted((a, b) => compareText(a.due ?? '9', b.due ?? '9') || compareText(a.ordered, b.ordered));
    const first = [...byDue.filter(({ isDelivered }) => isDelivered), ...byDue.filter(({ isDelivered }) => !isDelivered)];
    const recipes = new Map(orders.map(({ recipe }) => [keyOf(recipe), recipe]));
    for (const [key, { runs }] of recipes) {
        for (const { date, made = 0 } of runs) {
            let rest = made;
            for (const order of first) {
                if (keyOf(order.recipe) !== key || order.ordered > date.value) continue;
                const taken = Math.min(rest, left.get(order)!);
                left.set(order, left.get(order)! - taken);
                rest -= taken;
            }
        }
    }
    return orders.flatMap((order) => {
        const pieces = left.get(order)!;
        return order.isDelivered || pieces === 0 ? [] : [{ ...order, left: pieces }];
    });
}

function keyOf({ name, whole }: Recipe): string {
    return `${whole.uri} ${name}`;
}
