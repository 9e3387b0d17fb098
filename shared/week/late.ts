import type { BookSchedule } from '../bench/book-schedule';
import type { Bench } from '../bench/list-schedule';
import { type LowerBound, lowerBound } from '../bench/lower-bound';
import { showWhen } from '../quantity/calendar';
import { showTime } from '../quantity/show';
import type { LaidOrder } from './entry';
import type { WeekBound } from './week';

type Lateness = { readonly late?: number; readonly why?: string };

/** For each order, how late it is and why: it takes longer by itself, the hours do not go round, or it waits behind others. */
export function lateOrders(laid: readonly LaidOrder[], book: BookSchedule, bench: Bench, start: number): Lateness[] {
    return laid.map(({ order: { due } }, index) => {
        const ready = book.readyOf[index]!;
        if (due === undefined || ready <= due) return {};
        return { late: ready - due, why: whyLate(index, laid, book, bench, start) };
    });
}

function whyLate(index: number, laid: readonly LaidOrder[], book: BookSchedule, bench: Bench, start: number): string {
    const { order } = laid[index]!;
    const due = order.due!;
    const ready = showWhen(book.readyOf[index]!, start);
    const alone = lowerBound([order], bench);
    if (alone.ready > due) {
        const until = `it takes until ${showWhen(alone.ready, start)} even with nothing else on the bench`;
        if (typeof alone.by === 'object' && 'order' in alone.by)
            return `${until}: it had to be begun ${showTime(alone.ready - due)} sooner. Agree on ${ready}`;
        return `${until}, since ${busyWords(alone, laid)}. ${cure(alone)}, or agree on ${ready}`;
    }
    const soon = laid.map(({ order: other }) => (other.due !== undefined && other.due <= due ? other : { ...other, pieces: 0 }));
    const together = lowerBound(soon, bench);
    if (together.ready > due) {
        return `${busyWords(together, laid)}, so all that is due by then is ready on ${showWhen(together.ready, start)} at the soonest. ${cure(together)}, or agree on ${ready}`;
    }
    const names = before(index, laid, book);
    const others = names.length === 0 ? 'what was begun before it' : names.join(' and ');
    return `it waits behind ${others}. Nothing proves that it cannot be done in time: agree on ${ready}, or put one of the others off`;
}

/** Recipes that have had most of the hands before it was ready, at most two. */
function before(index: number, laid: readonly LaidOrder[], { turns, readyOf }: BookSchedule): string[] {
    const busy = new Map<string, number>();
    for (const { order, start, end } of turns) {
        if (order === index || start >= readyOf[index]!) continue;
        const { name } = laid[order]!.entry.plan.recipe;
        busy.set(name, (busy.get(name) ?? 0) + end - start);
    }
    const all = [...busy].filter(([, hours]) => hours > 0).sort((a, b) => b[1] - a[1]);
    return all.slice(0, 2).map(([name]) => name);
}

function cure({ by }: LowerBound): string {
    if (by === 'hands') return 'Another pair of hands or a longer day helps';
    return typeof by === 'object' && 'station' in by
        ? `Another laser than ${by.station} helps`
        : 'Only an earlier beginning helps';
}

/** Why no plan is ready sooner. */
export function boundOf(least: LowerBound, laid: readonly LaidOrder[], start: number): WeekBound {
    return { ready: start + least.ready, by: busyWords(least, laid) };
}

function busyWords({ by }: LowerBound, laid: readonly LaidOrder[]): string {
    if (by === 'hands') return 'the hands have no more hours';
    if (by === 'nothing') return 'there is nothing to do';
    if ('station' in by) return `the laser ${by.station} has no more hours`;
    return `one piece of ${laid[by.order]!.entry.plan.recipe.name} takes that long by itself`;
}
