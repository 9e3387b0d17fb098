import { isoMoment } from '../quantity/calendar';
import { minorDigits } from '../quantity/currency';
import { showNumber } from '../quantity/show';
import { csv } from '../sheets/csv';
import type { Week } from './week';

const hours = (seconds: number): string => showNumber(seconds / 3600, 2);

/** What is wanted, a row an order; times in hours. */
export function ordersCsv({ orders }: Week): string {
    return csv([
        ['recipe', 'title', 'for', 'pieces', 'ordered', 'due', 'ready', 'late h', 'hands h', 'laser h', 'why late'],
        ...orders.map((order) => [
            order.recipe,
            order.title,
            order.for ?? '',
            String(order.pieces),
            order.ordered ?? '',
            order.due ?? '',
            isoMoment(order.ready),
            order.late === undefined ? '' : hours(order.late),
            hours(order.attended),
            hours(order.machine),
            order.why ?? '',
        ]),
    ]);
}

/** Who does what when, a row a job; times in hours. */
export function jobsCsv({ sittings }: Week): string {
    return csv([
        ['hands', 'start', 'end', 'recipe', 'job', 'pieces', 'hours', 'laser', 'laser h'],
        ...sittings.flatMap(({ hands, jobs }) =>
            jobs.map(({ start, length, recipe, title, pieces, laser, machine }) => [
                String(hands),
                isoMoment(start),
                isoMoment(start + length),
                recipe,
                title,
                String(pieces),
                hours(length),
                laser ?? '',
                machine > 0 ? hours(machine) : '',
            ]),
        ),
    ]);
}

/** What to buy, a row an item. */
export function shoppingCsv({ shopping, currency }: Week): string {
    return csv([
        ['item', 'kind', 'needed', 'on hand', 'buy', 'unit', 'costs', 'currency', 'note', 'recipes'],
        ...shopping.map(({ item, kind, amount, onHand, buy, unit, cost, note, recipes }) => [
            item,
            kind,
            showNumber(amount, 2),
            onHand === undefined ? '' : showNumber(onHand, 2),
            showNumber(buy, 2),
            unit,
            cost === undefined || currency === undefined ? '' : cost.toFixed(minorDigits(currency)),
            cost === undefined ? '' : (currency ?? ''),
            note,
            recipes.join(' '),
        ]),
    ]);
}
