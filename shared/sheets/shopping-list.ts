import type { Plan } from '../plan/plan';
import { showNumber } from '../quantity/show';
import type { SheetFile } from './setup-svg';

/** What to have on the bench, as CSV by RFC 4180 (CRLF, quotes doubled). */
export function shoppingList(plan: Plan): SheetFile {
    const rows = [
        ['item', 'kind', 'amount', 'unit', 'note'],
        ...plan.supplies.map((supply) => [supply.item, supply.kind, showNumber(supply.amount, 2), supply.unit, supply.note]),
    ];
    const text = rows.map((row) => row.map(field).join(',')).join('\r\n');
    return {
        path: 'shopping-list.csv',
        text: `${text}\r\n`,
        note: `for ${plan.recipe.make} piece${plan.recipe.make === 1 ? '' : 's'}`,
    };
}

/** Quoted where needed; a leading sign that a spreadsheet would take for a formula is kept as text. */
function field(text: string): string {
    const safe = /^[=+\-@\t\r]/.test(text) && !/^[+-]?[\d.]+$/.test(text) ? `'${text}` : text;
    return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
