/**
 * Where a list parts in two: the first of the indices 0 to `length` for which `isBefore` does not hold, `length` when it holds for all.
 * It has to hold for some indices from the start on and for none behind them. O(log n).
 */
export function partitionPoint(length: number, isBefore: (index: number) => boolean): number {
    let low = 0;
    let high = length;
    while (low < high) {
        const middle = (low + high) >>> 1;
        if (isBefore(middle)) low = middle + 1;
        else high = middle;
    }
    return low;
}
