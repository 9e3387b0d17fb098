import type { PlanCost } from '../plan/plan';
import { showMoney } from '../quantity/currency';
import { showRatio, showTime } from '../quantity/show';

/** One line of what a run costs. */
export interface CostLine {
    readonly label: string;
    readonly amount: string;
    /** How it comes about. */
    readonly note: string;
    readonly sum?: true;
}

/** What a run costs, from the material to the price of one piece. */
export function costLines(cost: PlanCost, make: number): CostLine[] {
    const { currency } = cost;
    const money = (value: number): string => showMoney(value, currency);
    const lines: CostLine[] = [
        { label: 'Material', amount: money(cost.materials), note: unpriced(cost) },
        { label: 'Work', amount: money(cost.work), note: `${showTime(cost.attended)} at ${money(cost.hourly)} an hour` },
        { label: 'Laser', amount: money(cost.machine), note: `${showTime(cost.runs)} at ${money(cost.laserHourly)} an hour` },
        { label: 'Overhead', amount: money(cost.overhead), note: showRatio(cost.overheadShare) },
        { label: make === 1 ? 'Cost' : `Cost of ${make} pieces`, amount: money(cost.total), note: '', sum: true },
    ];
    if (make > 1) lines.push({ label: 'Cost of one', amount: money(cost.each), note: '' });
    lines.push({ label: 'Price of one', amount: money(cost.price), note: `with ${showRatio(cost.markup)} on top`, sum: true });
    return lines;
}

/** What the material is short of. */
function unpriced({ unpriced: items }: PlanCost): string {
    if (items.length === 0) return '';
    const some = items.slice(0, 4).join(', ');
    return `without ${some}${items.length > 4 ? ` and ${items.length - 4} more` : ''}: no price is written`;
}
