import { type CutPiece, cutWidth } from '../bench/sheet-yield';
import { type BlankToCut, blanksToCut, cuttingsOf } from '../plan/cutting';
import type { Memo } from '../plan/memo';
import type { Cutting, Supply } from '../plan/plan';
import { cutSheets, merged } from '../plan/supplies';
import { rackName } from '../recipe/stock';
import type { WeekEntry } from './entry';
import { cutOffcuts, keyOf, mostLaid, type OnHand } from './on-hand';
import type { ShoppingLine, Week, WeekCutting } from './week';

/** What all orders need, each thing once; blanks are cut for all of them together, out of offcuts first. */
export function shoppingOf(
    entries: readonly WeekEntry[],
    onHand: ReadonlyMap<string, OnHand>,
    memo: Memo,
): Pick<Week, 'cuttings' | 'shopping'> & { readonly currency?: string } {
    const cuttings = weekCuttings(
        entries.flatMap(({ plan: { blanks, recipe } }) => blanksToCut(blanks, recipe.make, (name) => `${recipe.name} ${name}`)),
        onHand,
        memo,
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
        return { ...bought(supply, onHand.get(keyOf(supply))?.amount(supply)), recipes };
    });
    return { cuttings, shopping: lines, ...(currency === undefined || currencies.size > 1 ? {} : { currency }) };
}

/** What is short, and what that part of it costs. */
function bought(supply: Supply, onHand: number | undefined): Omit<ShoppingLine, 'recipes'> {
    if (onHand === undefined) return { ...supply, buy: supply.amount };
    const buy = Math.max(0, supply.amount - onHand);
    const { cost, ...plain } = supply;
    const share = supply.amount > 0 ? buy / supply.amount : 0;
    return { ...plain, buy, onHand, ...(cost === undefined ? {} : { cost: share * cost }) };
}

function weekCuttings(blanks: readonly BlankToCut[], onHand: ReadonlyMap<string, OnHand>, memo: Memo): WeekCutting[] {
    const names = [...new Set(blanks.map(({ sheet }) => rackName(sheet)))];
    return names.flatMap((name): WeekCutting[] => {
        const own = blanks.filter(({ sheet }) => rackName(sheet) === name);
        const { sheet } = own[0]!;
        if (sheet.sheet === undefined) return [];
        const pieces: readonly CutPiece[] = own.map(({ piece }) => piece);
        const offcuts = onHand.get(keyOf({ kind: sheet.kind, item: name }))?.rack.offcuts ?? [];
        const { used, left } = cutOffcuts(offcuts, pieces, cutWidth[sheet.kind]);
        const [cutting] = cuttingsOf(
            left.map((piece) => ({ sheet, piece })),
            memo,
            mostLaid,
        );
        if (cutting !== undefined) return [{ ...cutting, offcuts: used }];
        if (left.length > 0) return [];
        const size = { width: sheet.sheet.width.value, height: sheet.sheet.height.value };
        const yielded = { sheets: 0, used: 0, layout: [], scaled: false, tooLarge: [] };
        return [{ sheet, size, yielded, consumed: 0, offcuts: used }];
    });
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
