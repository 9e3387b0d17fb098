import type { Plan } from '../plan/plan';
import { minorDigits } from '../quantity/currency';
import { showNumber } from '../quantity/show';
import { csv } from './csv';
import type { SheetFile } from './setup-svg';

/** What to have on the bench, as CSV, with what is used up of it costs. */
export function shoppingList(plan: Plan): SheetFile {
    const currency = plan.cost?.currency;
    const rows = [
        ['item', 'kind', 'amount', 'unit', 'note', 'costs', 'currency'],
        ...plan.supplies.map(({ item, kind, amount, unit, note, cost }) => [
            item,
            kind,
            showNumber(amount, 2),
            unit,
            note,
            cost === undefined || currency === undefined ? '' : cost.toFixed(minorDigits(currency)),
            cost === undefined ? '' : (currency ?? ''),
        ]),
    ];
    return {
        path: 'shopping-list.csv',
        text: csv(rows),
        note: `for ${plan.recipe.make} piece${plan.recipe.make === 1 ? '' : 's'}${plan.unknown === undefined ? '' : `, not complete: ${plan.unknown}`}`,
    };
}
