import type { Plan } from '../plan/plan';
import { showNumber } from '../quantity/show';
import { csv } from './csv';
import type { SheetFile } from './setup-svg';

/** What to have on the bench, as CSV. */
export function shoppingList(plan: Plan): SheetFile {
    const rows = [
        ['item', 'kind', 'amount', 'unit', 'note'],
        ...plan.supplies.map((supply) => [supply.item, supply.kind, showNumber(supply.amount, 2), supply.unit, supply.note]),
    ];
    return {
        path: 'shopping-list.csv',
        text: csv(rows),
        note: `for ${plan.recipe.make} piece${plan.recipe.make === 1 ? '' : 's'}`,
    };
}
