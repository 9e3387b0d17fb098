import type { Plan, PlanCost, Times } from '../plan/plan';
import { showMoney } from '../quantity/currency';
import type { Recipe } from '../recipe/recipe';
import { type Figure, word, worked } from './figure';

/** What is written of a recipe as a whole. */
export function recipeFigures(recipe: Recipe): Figure[] {
    return [
        word('name', recipe.name),
        word('title', recipe.title),
        ...(recipe.about === undefined ? [] : [word('about', recipe.about)]),
        worked('issue', recipe.revision, 'count'),
        worked('make', recipe.make, 'count'),
        ...(recipe.laser === undefined ? [] : [word('laser', recipe.laser.name)]),
        ...(recipe.base === undefined ? [] : [word('based on', recipe.base.name)]),
    ];
}

/** How long one piece takes. */
export function timeFigures(totals: Times | undefined): Figure[] {
    if (totals === undefined) return ['machine', 'hands', 'waiting'].map((label) => word(label, 'unknown'));
    const { machine, attended, waiting } = totals;
    return [worked('machine', machine, 'time'), worked('hands', attended, 'time'), worked('waiting', waiting, 'time')];
}

/** How long all the pieces take, in the hours of the shop where it says them. */
export function runFigures({ schedule, unknown }: Plan): Figure[] {
    if (unknown !== undefined) return [word('ready after', `unknown: ${unknown}`)];
    const { ready, attended, machine, idle, sittings } = schedule;
    return [
        worked('ready after', ready, 'time'),
        worked('attended', attended, 'time'),
        worked('laser', machine, 'time'),
        worked('waiting', idle, 'time'),
        worked('sittings', sittings.length, 'count'),
    ];
}

/** What all the pieces cost, and the price of one; nothing without a shop that reckons. */
export function costFigures(cost: PlanCost | undefined): Figure[] {
    if (cost === undefined) return [];
    const money = (label: string, value: number): Figure => {
        const text = showMoney(value, cost.currency);
        return { label, text, key: text, amount: { value, dimension: 'money', unit: cost.currency } };
    };
    return [
        money('material', cost.materials),
        money('work', cost.work),
        money('laser', cost.machine),
        money('overhead', cost.overhead),
        money('cost', cost.total),
        money('cost of one', cost.each),
        money('price of one', cost.price),
        ...(cost.unpriced.length === 0 ? [] : [word('without a price', cost.unpriced.join(', '))]),
    ];
}
