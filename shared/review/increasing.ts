import { partitionPoint } from '../quantity/partition-point';

/**
 * Places of a longest increasing run in a list of different numbers, in order: what stayed in order
 * when the rest was moved. Patience sorting, n log n.
 */
export function increasing(list: readonly number[]): number[] {
    // The place at which the best run of each length ends, and what stands before each place in its run.
    const ends: number[] = [];
    const previous: number[] = [];
    for (const [place, value] of list.entries()) {
        const length = partitionPoint(ends.length, (index) => list[ends[index]!]! < value);
        previous.push(length === 0 ? -1 : ends[length - 1]!);
        ends[length] = place;
    }
    const run: number[] = [];
    for (let place = ends.at(-1) ?? -1; place >= 0; place = previous[place]!) run.push(place);
    return run.reverse();
}
