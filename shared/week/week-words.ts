import type { Cutting } from '../plan/plan';
import { showWhen } from '../quantity/calendar';
import { showMoney } from '../quantity/currency';
import { showLength, showNumber, showTime } from '../quantity/show';
import { showSupply, supplyUnit } from '../quantity/show-supply';
import { rackName } from '../recipe/stock';
import { oneLine } from '../review/one-line';
import { onSheet } from './shopping';
import type { PlannedOrder, ShoppingLine, Week, WeekCutting, WeekJob, WeekSitting } from './week';

const dayNames = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const day = 86_400;

export function headWords(week: Week): string[] {
    const { orders, start, makers, workday, closed, ready, least, gap, leastLate, attended, attendedApart } = week;
    const pieces = orders.reduce((sum, order) => sum + order.pieces, 0);
    const hours = workday === undefined ? 'day and night' : `${showTime(workday)} a day`;
    const shut = closed.length === 0 ? '' : `, closed on ${closed.map((index) => dayNames[index]).join(' and ')}`;
    const late = orders.filter((order) => order.late !== undefined).length;
    const lines = [
        `From ${showMoment(start)}: ${plural(orders.length, 'order')}, ${plural(pieces, 'piece')}. ${plural(makers, 'pair')} of hands, ${hours}${shut}.`,
        `All is ready on ${showMoment(ready)}. No plan has it ready before ${showMoment(least.ready)}, since ${least.by}: ${gapWords(gap)}.`,
        `${showHours(attended)} at the bench and beside the lasers${Math.round(attendedApart - attended) >= 60 ? `, ${showHours(attendedApart)} with each order by itself` : ''}.`,
    ];
    if (late > 0) {
        const proof = leastLate > 0 ? ` In every plan something is at least ${showTime(leastLate)} late.` : '';
        lines.push(`${plural(late, 'order')} ${late === 1 ? 'is' : 'are'} late.${proof}`);
    }
    const short = week.shopping.filter(({ onHand, buy }) => onHand !== undefined && buy > 0).map(({ item }) => item);
    if (short.length > 0) lines.push(`Too little on hand: ${short.join(', ')}.`);
    if (week.coarse) lines.push('There are so many pieces that several were laid out as one.');
    for (const { recipe, why } of week.unknown) lines.push(`${recipe} is not complete: ${why}.`);
    return lines;
}

function gapWords(gap: number): string {
    if (gap < 5e-4) return 'this plan is the best there is';
    return `this plan is at most ${showNumber(100 * gap, 1)} % longer than the best`;
}

export function loadWords({ loads }: Week): string[] {
    return loads.map(({ laser, busy, share }) => {
        const part = share === undefined ? '' : `, ${showNumber(100 * share, 0)} % of the hours until all is ready`;
        return `${laser === undefined ? 'hands' : `laser ${laser}`}: ${showHours(busy)}${part}`;
    });
}

/** "6 heron-tray for Ada, due 2026-12-18". */
export function orderWords({ recipe, pieces, for: whom, due }: PlannedOrder): string {
    return `${pieces} ${recipe}${whom === undefined ? '' : ` for ${whom}`}${due === undefined ? '' : `, due ${due}`}`;
}

/** An order in the columns of a table: ready, pieces, recipe, for, due, hands. */
export function orderCells({ ready, pieces, recipe, for: whom = '', due = '', attended }: PlannedOrder): string[] {
    return [dateOf(ready), String(pieces), recipe, whom, due, showHours(attended)];
}

export function lateWords(order: PlannedOrder): string {
    return `${orderWords(order)}, is ready on ${showMoment(order.ready)}, ${showTime(order.late ?? 0)} late: ${order.why}.`;
}

export function jobWords({ recipe, title, pieces, length, machine, laser }: WeekJob): string {
    const burnt =
        machine > 0 ? `, of which ${laser === undefined ? 'the laser' : `laser ${laser}`} runs ${showTime(machine)}` : '';
    return `${recipe}: ${title}, ${plural(pieces, 'piece')}, ${showTime(length)}${burnt}`;
}

/** Sittings day by day: "Tue 1 Dec 2026" and those that begin on it. */
export function byDay({ sittings }: Week): { readonly day: string; readonly sittings: readonly WeekSitting[] }[] {
    const days = new Map<number, WeekSitting[]>();
    for (const sitting of sittings) {
        const of = Math.floor(sitting.start / day);
        days.set(of, [...(days.get(of) ?? []), sitting]);
    }
    return [...days].map(([of, list]) => ({ day: dateOf(of * day), sittings: list }));
}

export function dateOf(moment: number): string {
    return showMoment(moment).split(',')[0]!;
}

/** "08:00 to 09:40"; the end with its date where that is another. */
export function timesOf({ start, end }: Pick<WeekSitting, 'start' | 'end'>): string {
    const [from, to] = [showMoment(start), showMoment(end)].map((words) => words.split(', ')[1]!);
    return Math.floor(start / day) === Math.floor(end / day) ? `${from} to ${to}` : `${from} to ${showMoment(end)}`;
}

export function cuttingWords({ sheet, size, yielded }: Cutting): string {
    const unit = sheet.sheet?.width.unit;
    const { sheets, used, tooLarge } = yielded;
    const short = tooLarge.length === 0 ? '' : `; ${[...new Set(tooLarge)].join(' and ')} does not fit`;
    return `${rackName(sheet)}: ${plural(sheets, 'sheet')} of ${showLength(size.width, unit)} x ${showLength(size.height, unit)}, ${showNumber(100 * used, 0)} % of it used${short}`;
}

/** What is cut out of each offcut, then out of each sheet; sheets cut alike together. */
export function sheetWords({ yielded, offcuts }: WeekCutting): string[] {
    const counts = new Map<string, number>();
    for (const sheet of yielded.layout) counts.set(onSheet(sheet), (counts.get(onSheet(sheet)) ?? 0) + 1);
    const alike = [...counts].map(([words, count]) => (count === 1 ? words : `${words} (${count} times)`));
    return [
        ...offcuts.map(
            ({ offcut, laid }) => `offcut of ${showLength(offcut.width)} x ${showLength(offcut.height)}: ${onSheet(laid)}`,
        ),
        ...alike,
        ...(yielded.scaled ? ['and so on in the same way'] : []),
    ];
}

export function buyWords(line: ShoppingLine, currency: string | undefined): string[] {
    const { item, buy, unit, amount, onHand, cost, recipes } = line;
    return [
        item,
        showNumber(buy, 1),
        supplyUnit(buy, unit),
        onHand === undefined ? '' : `needs ${showSupply(amount, unit)}, has ${showSupply(onHand, unit)}`,
        cost === undefined || currency === undefined ? '' : showMoney(cost, currency),
        recipes.length > 3 ? `${recipes.length} recipes` : recipes.join(', '),
    ];
}

/** Work in hours and minutes, "80 h 12 min": a day of it has fewer than 24. */
export function showHours(seconds: number): string {
    const minutes = Math.round(seconds / 60);
    return [minutes >= 60 ? `${Math.floor(minutes / 60)} h` : '', minutes % 60 > 0 || minutes < 60 ? `${minutes % 60} min` : '']
        .filter((part) => part !== '')
        .join(' ');
}

/** What goes on meanwhile; more than these are counted. */
const mostWaits = 3;

export function meanwhileWords({ meanwhile }: WeekSitting): string {
    const all = [...new Set(meanwhile)];
    const more = all.length - mostWaits;
    return more > 1 ? `${all.slice(0, mostWaits).join('; ')}; and ${more} more` : all.join('; ');
}

/** "Tue 1 Dec 2026, 08:00". */
function showMoment(moment: number): string {
    return showWhen(0, moment);
}

export function plural(count: number, word: string): string {
    return `${count} ${word}${count === 1 ? '' : 's'}`;
}

/** Cells below each other; what is empty in all rows takes no room. */
export function columns(rows: readonly (readonly string[])[]): string[] {
    const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((cells) => oneLine(cells[at] ?? '').length)));
    return rows.map((cells) =>
        cells
            .map((cell, at) => (widths[at] === 0 ? '' : `${oneLine(cell).padEnd(widths[at]!)}  `))
            .join('')
            .trimEnd(),
    );
}
