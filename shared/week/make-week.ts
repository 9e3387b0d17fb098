import { bookSchedule } from '../bench/book-schedule';
import type { Bench } from '../bench/list-schedule';
import type { Work } from '../bench/work';
import { WorkHours } from '../bench/work-hours';
import type { Memo } from '../plan/memo';
import type { StepWork } from '../plan/plan';
import { sittingsOf } from '../plan/sittings';
import { daysSince1970 } from '../quantity/calendar';
import { waitOf } from '../sheets/day-book';
import type { LaidOrder, WeekEntry } from './entry';
import { boundOf, lateOrders } from './late';
import { type CountedStock, onHand, type SpentRun } from './on-hand';
import { shoppingOf } from './shopping';
import type { AskedOrder, PlannedOrder, Week, WeekJob, WeekLoad, WeekSitting, WeekWait } from './week';

const day = 86_400;
/** More turns than this are not laid out one by one: pieces go through in lots. */
const mostTurns = 6000;

export interface WeekAsked {
    /** When the first working day begins, a moment of quantity/calendar. */
    readonly start: number;
    /** Pairs of hands. */
    readonly makers: number;
    /** Days of the week on which the shop is closed, 0 for Sunday. */
    readonly closed: readonly number[];
    /** What was counted in the shop. */
    readonly stock: readonly CountedStock[];
}

/** All orders on one bench, in one book. @param spent runs, each with the plan of what was begun: they used up stock */
export function makeWeek(
    entries: readonly WeekEntry[],
    { start, makers, closed, stock }: WeekAsked,
    spent: readonly SpentRun[],
    memo: Memo,
): Week {
    const workday = entries.map(({ plan }) => plan.recipe.shop?.workday?.value).find((hours) => hours !== undefined);
    const hours = new WorkHours(workday, (index) => closed.includes(weekdayOf(start + index * day)));
    const bench: Bench = { makers, hours };
    const laid = layOut(entries, (due) => closingOf(due, start, hours));
    const book = bookSchedule(
        laid.map(({ order }) => order),
        bench,
    );
    const late = lateOrders(laid, book, bench, start);
    const unsorted = laid.map(({ entry, order }, index): PlannedOrder & { readonly index: number } => {
        const turns = book.turns.filter((turn) => turn.order === index);
        return {
            index,
            ...askedOf(entry),
            recipe: entry.plan.recipe.name,
            title: entry.plan.recipe.title,
            pieces: entry.plan.recipe.make,
            ready: start + book.readyOf[index]!,
            ...late[index],
            attended: turns.reduce((sum, turn) => sum + turn.end - turn.start, 0),
            machine: turns.reduce((sum, { work }) => sum + order.works[work]!.machine, 0),
        };
    });
    const sorted = unsorted.toSorted((a, b) => a.ready - b.ready || a.index - b.index);
    const placeOf = new Map(sorted.map(({ index }, place) => [index, place]));
    const bound = boundOf(book.least, laid, start);
    return {
        start,
        makers,
        ...(hours.length === day ? {} : { workday: hours.length }),
        closed,
        orders: sorted.map(({ index: _index, ...order }) => order),
        sittings: sittings(laid, book, makers, start, placeOf),
        waits: waitsOf(laid, book, start),
        loads: loadsOf(laid, book, bench),
        ready: start + book.ready,
        least: bound,
        gap: book.least.ready > 0 ? book.ready / book.least.ready - 1 : 0,
        leastLate: book.leastLate,
        ...shoppingOf(entries, onHand(stock, spent), memo),
        attended: book.attended,
        attendedApart: entries.reduce((sum, { plan }) => sum + plan.schedule.attended, 0),
        unknown: unknownOf(entries),
        coarse: laid.some(({ lot }) => lot > 1),
    };
}

function askedOf({ for: whom, ordered, due }: WeekEntry): AskedOrder {
    return {
        ...(whom === undefined ? {} : { for: whom }),
        ...(ordered === undefined ? {} : { ordered }),
        ...(due === undefined ? {} : { due }),
    };
}

/** 0 for Sunday: 1970 began on a Thursday. */
function weekdayOf(moment: number): number {
    return (((Math.floor(moment / day) + 4) % 7) + 7) % 7;
}

/** The end of a day's work, s from the start. By day and night it is midnight. */
function closingOf(date: string, start: number, hours: WorkHours): number | undefined {
    const days = daysSince1970(date);
    if (days === undefined) return undefined;
    const morning = Math.floor(start / day);
    return hours.length === day ? (days + 1) * day - start : (days - morning) * day + hours.length;
}

function layOut(entries: readonly WeekEntry[], closing: (due: string) => number | undefined): LaidOrder[] {
    const turns = entries.reduce((sum, { plan }) => sum + plan.schedule.works.length * plan.recipe.make, 0);
    const lot = Math.max(1, Math.ceil(turns / mostTurns));
    return entries.map((entry) => {
        const due = entry.due === undefined ? undefined : closing(entry.due);
        const { make } = entry.plan.recipe;
        // A few pieces stay by themselves.
        const many = Math.min(lot, Math.max(1, Math.floor(make / 4)));
        const works = entry.plan.schedule.works.map((work) => inLots(work, many));
        const pieces = Math.ceil(make / many);
        return { entry, order: { works, pieces, ...(due === undefined ? {} : { due }) }, lot: many };
    });
}

function inLots(work: StepWork, lot: number): Work {
    if (lot === 1) return work;
    const { batch, each, machine } = work;
    return {
        ...work,
        each: each * lot,
        machine: machine * lot,
        ...(batch === undefined ? {} : { batch: Math.max(1, Math.floor(batch / lot)) }),
    };
}

type Book = ReturnType<typeof bookSchedule>;

/** The sittings of each pair of hands, by the day book of a single recipe. */
function sittings(
    laid: readonly LaidOrder[],
    { turns }: Book,
    makers: number,
    start: number,
    placeOf: ReadonlyMap<number, number>,
): WeekSitting[] {
    const steps = laid.flatMap(({ entry }, order) => entry.plan.steps.map((_, step) => ({ order, step })));
    const firstStep = firstsOf(laid.map(({ entry }) => entry.plan.steps.length));
    const firstWork = firstsOf(laid.map(({ order }) => order.works.length));
    const works = laid.flatMap(({ entry, order }, index) =>
        order.works.map((work, at): StepWork => {
            const { step, part } = entry.plan.schedule.works[at]!;
            return { ...work, step: firstStep[index]! + step, part };
        }),
    );
    const all = turns.map((turn) => ({ ...turn, work: firstWork[turn.order]! + turn.work }));
    const words = (step: number): string => {
        const { order, step: own } = steps[step]!;
        const { plan } = laid[order]!.entry;
        return `${plan.recipe.name}: ${waitOf(plan, own)}`;
    };
    const list = Array.from({ length: makers }, (_, maker) =>
        sittingsOf(
            all.filter((turn) => turn.maker === maker),
            works,
            all,
        ).map(
            (sitting): WeekSitting => ({
                hands: maker + 1,
                start: start + sitting.start,
                end: start + sitting.end,
                meanwhile: sitting.meanwhile.map(words),
                jobs: sitting.jobs.map(({ step, part, pieces, start: from, end, machine }): WeekJob => {
                    const { order, step: own } = steps[step]!;
                    const { entry, lot } = laid[order]!;
                    const { plan } = entry;
                    const { title } = plan.steps[own]!;
                    const laser = plan.recipe.laser?.name;
                    return {
                        order: placeOf.get(order)!,
                        recipe: plan.recipe.name,
                        title: part === '' ? title : `${title}, ${part}`,
                        pieces: Math.min(pieces * lot, plan.recipe.make),
                        start: start + from,
                        length: end - from,
                        machine,
                        ...(machine > 0 && laser !== undefined ? { laser } : {}),
                    };
                }),
            }),
        ),
    );
    return list.flat().sort((a, b) => a.start - b.start || a.hands - b.hands);
}

function waitsOf(laid: readonly LaidOrder[], { turns }: Book, start: number): WeekWait[] {
    const waits = new Map<string, WeekWait>();
    for (const { order, work, end, ready } of turns) {
        if (ready <= end) continue;
        const { plan } = laid[order]!.entry;
        const key = `${order} ${work}`;
        const known = waits.get(key);
        waits.set(key, {
            recipe: plan.recipe.name,
            what: waitOf(plan, plan.schedule.works[work]!.step),
            start: Math.min(known?.start ?? Number.POSITIVE_INFINITY, start + end),
            end: Math.max(known?.end ?? 0, start + ready),
        });
    }
    return [...waits.values()].sort((a, b) => a.start - b.start || a.end - b.end);
}

function firstsOf(lengths: readonly number[]): number[] {
    let sum = 0;
    return lengths.map((length) => {
        const first = sum;
        sum += length;
        return first;
    });
}

function loadsOf(laid: readonly LaidOrder[], { turns, ready, attended }: Book, { hours, makers }: Bench): WeekLoad[] {
    const lasers = new Map<string, number>();
    for (const { order, work, start, end } of turns) {
        const { station } = laid[order]!.order.works[work]!;
        if (station !== undefined) lasers.set(station, (lasers.get(station) ?? 0) + end - start);
    }
    const open = hours.open(ready);
    const share = (busy: number, many: number): { share?: number } =>
        hours.length === day || open === 0 ? {} : { share: busy / (open * many) };
    return [
        { busy: attended, ...share(attended, makers) },
        ...[...lasers].map(([laser, busy]) => ({ laser, busy, ...share(busy, 1) })),
    ];
}

function unknownOf(entries: readonly WeekEntry[]): { recipe: string; why: string }[] {
    const whys = entries.flatMap(({ plan }) => (plan.unknown === undefined ? [] : [[plan.recipe.name, plan.unknown] as const]));
    return [...new Map(whys)].map(([recipe, why]) => ({ recipe, why }));
}
