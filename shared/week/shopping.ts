import { blanksToCut, cuttingsOf } from '../plan/cutting';
import type { Memo } from '../plan/memo';
import type { Cutting, Supply } from '../plan/plan';
import { cutSheets, merged } from '../plan/supplies';
import type { WeekEntry } from './entry';
import type { ShoppingLine, Week } from './week';

/** More blanks of one sheet than this are not laid out one by one. */
const mostLaid = 200;

/** What all orders need, each thing once; sheets are cut for all of them together. */
export function shoppingOf(
    entries: readonly WeekEntry[],
    memo: Memo,
): Pick<Week, 'cuttings' | 'shopping'> & { readonly currency?: string } {
    const cuttings = cuttingsOf(
        entries.flatMap(({ plan: { blanks, recipe } }) => blanksToCut(blanks, recipe.make, (name) => `${recipe.name} ${name}`)),
        memo,
        mostLaid,
    );
    const shop = entries.map(({ plan }) => plan.recipe.shop).find((each) => each !== undefined);
    const currencies = new Set(entries.flatMap(({ plan }) => plan.cost?.currency ?? []));
    const [currency] = currencies;
    const needed = [
        ...cuttings.map((cutting) => cutSheets(cutting, undefined, shop)),
        ...merged(entries.flatMap(({ plan }) => plan.supplies.filter((supply) => !isCut(supply)))),
    ];
    const lines = needed.map((supply): ShoppingLine => {
        const recipes = [...new Set(entries.filter((entry) => needs(entry, supply)).map(({ plan }) => plan.recipe.name))];
        return { ...supply, recipes, buy: supply.amount };
    });
    return { cuttings, shopping: lines, ...(currency === undefined || currencies.size > 1 ? {} : { currency }) };
}

/** Whole sheets, which are counted for all orders together. */
function isCut({ kind, unit }: Supply): boolean {
    return (kind === 'board' || kind === 'veneer') && unit === 'sheets';
}

function needs({ plan }: WeekEntry, { item, kind, unit, note }: Supply): boolean {
    return plan.supplies.some(
        (own) => own.item === item && own.kind === kind && own.unit === unit && (unit !== 'pieces' || own.note === note),
    );
}

/** Blanks on one sheet, counted: "4 heron-tray tray, 2 tide-coaster coaster". */
export function onSheet(sheet: Cutting['yielded']['layout'][number]): string {
    const counts = new Map<string, number>();
    for (const { name } of sheet) counts.set(name, (counts.get(name) ?? 0) + 1);
    return [...counts].map(([name, count]) => `${count} ${name}`).join(', ');
}
