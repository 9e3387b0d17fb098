import type { BenchView } from '../../../shared/view/bench-view';
import type { BenchTicks } from '../messages';

/** How far the work at the bench is. */
export interface RunState {
    /** Indices of the steps that are ticked. */
    readonly done: ReadonlySet<number>;
    /** The first step that is not; undefined before a run has begun and once all is done. */
    readonly now?: number;
    readonly isOver: boolean;
    /** When the waits that run are over, ms since 1970, by the index of the step. */
    readonly ends: ReadonlyMap<number, number>;
}

/** @param ticks by the ids of steps; what is ticked of steps that are gone does not count */
export function runOf({ steps }: Pick<BenchView, 'steps'>, ticks: BenchTicks): RunState {
    const done = new Set<number>();
    const ends = new Map<number, number>();
    for (const { id, index } of steps) {
        const tick = Object.hasOwn(ticks, id) ? ticks[id] : undefined;
        if (tick === undefined) continue;
        done.add(index);
        if (tick.ends !== undefined) ends.set(index, tick.ends);
    }
    const now = done.size === 0 ? undefined : steps.find(({ index }) => !done.has(index))?.index;
    return { done, ends, isOver: steps.length > 0 && done.size === steps.length, ...(now === undefined ? {} : { now }) };
}
