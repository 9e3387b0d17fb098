import { type Bench, type ListSchedule, listSchedule, type Order, type Preference } from './list-schedule';
import { type LowerBound, lowerBound } from './lower-bound';

/** Several orders on one bench, and how far from the best that may be. Times in s from the start. */
export interface BookSchedule extends ListSchedule {
    /** When the last order is ready. */
    readonly ready: number;
    /** No schedule has everything ready before. */
    readonly least: LowerBound;
    /** By how much some order is late in every schedule; 0 where that is not proven. */
    readonly leastLate: number;
    /** All that takes hands, in all. */
    readonly attended: number;
}

const preferences: readonly Preference[] = [
    { first: 'latest-start' },
    { first: 'due' },
    { first: 'longest' },
    { first: 'latest-start', keepsSetUp: true },
    { first: 'due', keepsSetUp: true },
    { first: 'longest', keepsSetUp: true },
];

/** How often orders that came out late are tried with an earlier date. */
const maxPulls = 6;
/** More turns than this are laid out once with each preference and not again. */
const mostTurns = 4000;

/**
 * The best of several list schedules: least late in all, then ready soonest, then fewest hours at the bench. Orders that are late are
 * laid out again as if they were wanted by as much sooner. Deterministic; not the best there is: `least` says how far that can be.
 */
export function bookSchedule(orders: readonly Order[], bench: Bench): BookSchedule {
    const tried = preferences.map((preference) => listSchedule(orders, bench, preference));
    const usable = tried[0]!.orders;
    const dues = usable.map(({ due }) => due ?? Number.POSITIVE_INFINITY);
    let best = tried.reduce((a, b) => (isBetter(b, a, dues) ? b : a));
    let pulled = dues;
    for (let pull = 0; pull < maxPulls && best.turns.length <= mostTurns && latenessOf(best, dues) > 0; pull++) {
        const { readyOf } = best;
        pulled = pulled.map((due, order) => due - Math.max(0, readyOf[order]! - dues[order]!));
        const sooner = usable.map(({ due: _due, ...order }, index) =>
            Number.isFinite(pulled[index]!) ? { ...order, due: pulled[index]! } : order,
        );
        const again = { ...listSchedule(sooner, bench, { first: 'latest-start' }), orders: usable };
        if (isBetter(again, best, dues)) best = again;
    }
    return {
        ...best,
        ready: Math.max(0, ...best.readyOf),
        least: lowerBound(usable, bench),
        leastLate: leastLate(usable, bench),
        attended: attendedOf(best),
    };
}

function isBetter(a: ListSchedule, b: ListSchedule, dues: readonly number[]): boolean {
    const late = latenessOf(a, dues) - latenessOf(b, dues);
    if (late !== 0) return late < 0;
    const ready = Math.max(0, ...a.readyOf) - Math.max(0, ...b.readyOf);
    return ready !== 0 ? ready < 0 : attendedOf(a) < attendedOf(b);
}

function latenessOf({ readyOf }: ListSchedule, dues: readonly number[]): number {
    return readyOf.reduce((sum, ready, order) => sum + Math.max(0, ready - dues[order]!), 0);
}

function attendedOf({ turns }: ListSchedule): number {
    return turns.reduce((sum, { start, end }) => sum + end - start, 0);
}

/** Of all that is wanted by a day, the last is ready no sooner than this: what that is past the day, s. */
function leastLate(orders: readonly Order[], bench: Bench): number {
    const dues = new Set(orders.flatMap(({ due }) => due ?? []));
    let late = 0;
    for (const by of dues) {
        const due = orders.map((order) => (order.due !== undefined && order.due <= by ? order : { ...order, pieces: 0 }));
        late = Math.max(late, lowerBound(due, bench).ready - by);
    }
    return late;
}
