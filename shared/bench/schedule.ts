import { listSchedule } from './list-schedule';
import type { Turn, Work } from './work';
import { WorkHours } from './work-hours';

export interface Schedule {
    readonly turns: readonly Turn[];
    /** When the last piece is ready. */
    readonly ready: number;
    /** Hands-on and beside the laser, in all. */
    readonly attended: number;
    /** Time until `ready` in which nobody is needed. */
    readonly idle: number;
    /** So many pieces that only the first ones were laid out, and the rest follow at the pace of the hands. */
    readonly scaled: boolean;
}

/** More turns, or pieces, than this are not laid out one by one. */
const mostTurns = 2000;
const mostPieces = 200;
const day = 86_400;

/**
 * One maker at work on several pieces of one recipe: while one piece waits, the hands are on another.
 * The list scheduler of a book with a single order. Deterministic.
 *
 * @param works in the order of the recipe; `after` points backwards
 * @param workday hours in which hands can work, in s from the start of each day; absent: day and night
 */
export function schedule(works: readonly Work[], pieces: number, workday?: number): Schedule {
    const wanted = pieces >= 1 && Number.isFinite(pieces) ? Math.floor(pieces) : 0;
    const laid = Math.min(wanted, mostPieces, Math.max(1, Math.floor(mostTurns / Math.max(1, works.length))));
    const hours = new WorkHours(workday);
    const { orders, turns: all } = listSchedule([{ works, pieces: laid }], { makers: 1, hours });
    const turns = all.map(({ order: _order, maker: _maker, ...turn }): Turn => turn);
    const handsEach = orders[0]!.works.reduce(
        (sum, work) => sum + work.each + work.machine + (work.batch === undefined ? 0 : work.setUp / work.batch),
        0,
    );
    const rest = (wanted - laid) * handsEach;
    const attended = turns.reduce((sum, turn) => sum + turn.end - turn.start, 0) + rest;
    const ready = turns.reduce((latest, turn) => Math.max(latest, turn.ready), 0) + rest * (day / hours.length);
    return { turns, ready, attended, idle: Math.max(0, ready - attended), scaled: laid < wanted };
}
