import { type Bench, handsOn, type Order } from './list-schedule';
import type { Work } from './work';

/** What no schedule of these orders can beat, and why. */
export interface LowerBound {
    /** When all is ready at the soonest, s from the start. */
    readonly ready: number;
    /** The longest chain of one order, the load of one station, or that of all hands. */
    readonly by: { readonly order: number } | { readonly station: string } | 'hands' | 'nothing';
}

/** A work with all that is known of it without any other order. Times in s. */
interface Load {
    readonly work: Work;
    /** When its first piece can begin at the soonest. */
    readonly head: number;
    /** Hands-on for all pieces, with the fewest set-ups. */
    readonly length: number;
    /** The longest single turn of it. */
    readonly longest: number;
    /** What follows on its last piece at the soonest. */
    readonly tail: number;
}

/**
 * The largest of: the way of one piece of each order by itself, in the hours of the shop; for each station, and for
 * all hands together, the soonest beginning, all work on it from then on and the shortest that follows. The last two
 * are tried with every beginning, leaving out what can begin sooner: the one-machine bound without an order (a
 * textbook's, from memory; own derivation for working hours). O(n²) in the works.
 *
 * @param orders as `listSchedule` gives them back, with figures that are none taken out
 */
export function lowerBound(orders: readonly Order[], bench: Bench): LowerBound {
    let best: LowerBound = { ready: 0, by: 'nothing' };
    const raise = (ready: number, by: LowerBound['by']): void => {
        if (ready > best.ready) best = { ready, by };
    };
    const byStation = new Map<string, Load[]>();
    const byHands: Load[] = [];
    for (const [order, { works, pieces }] of orders.entries()) {
        if (pieces === 0) continue;
        const heads = headsOf(works, pieces, bench);
        raise(Math.max(0, ...heads.map(({ ready }) => ready)), { order });
        const tails = restsOf(works);
        for (const [index, work] of works.entries()) {
            const setUps = Math.ceil(pieces / (work.batch ?? Number.POSITIVE_INFINITY)) || 1;
            const length = pieces * handsOn(work) + setUps * work.setUp;
            if (length === 0) continue;
            const load = { work, head: heads[index]!.start, length, longest: work.setUp + handsOn(work), tail: tails[index]! };
            byHands.push(load);
            if (work.station !== undefined) byStation.set(work.station, [...(byStation.get(work.station) ?? []), load]);
        }
    }
    for (const [station, loads] of byStation) raise(loadBound(loads, bench, 1), { station });
    raise(loadBound(byHands, bench, Math.max(1, Math.floor(bench.makers) || 1)), 'hands');
    return best;
}

/** When each work of one piece begins and is ready at the soonest, with nothing else on the bench. */
function headsOf(works: readonly Work[], pieces: number, { hours }: Bench): { start: number; ready: number }[] {
    const heads: { start: number; ready: number }[] = [];
    for (const work of works) {
        const from = work.after.reduce((latest, before) => Math.max(latest, heads[before]!.ready), 0);
        // Of several pieces, one may find everything set up.
        const length = handsOn(work) + (pieces === 1 ? work.setUp : 0);
        const start = work.setUp + handsOn(work) === 0 ? from : hours.earliest(from, length);
        heads.push({ start, ready: start + length + work.wait });
    }
    return heads;
}

/** Time from the end of the hands' part of each work to the end of the piece, s. */
function restsOf(works: readonly Work[]): number[] {
    const rests = works.map(({ wait }) => wait);
    for (let index = works.length - 1; index >= 0; index--) {
        for (const before of works[index]!.after) {
            const rest = works[before]!.wait + handsOn(works[index]!) + rests[index]!;
            rests[before] = Math.max(rests[before]!, rest);
        }
    }
    return rests;
}

/** All loads that begin from a moment on, one after the other, shared by so many. */
function loadBound(loads: readonly Load[], { hours }: Bench, many: number): number {
    const late = loads.toSorted((a, b) => b.head - a.head);
    let sum = 0;
    let longest = 0;
    let tail = Number.POSITIVE_INFINITY;
    let bound = 0;
    for (const load of late) {
        sum += load.length;
        longest = Math.max(longest, load.longest);
        tail = Math.min(tail, load.tail);
        bound = Math.max(bound, hours.over(load.head, sum / many, longest) + tail);
    }
    return bound;
}
