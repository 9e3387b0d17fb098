/** Where something ends to hold: the last number found at which it holds, and the first at which it does not. */
export interface Bracket {
    readonly last: number;
    readonly first: number;
}

/**
 * Halves the way from `low`, where something holds, to `high`, where it does not, until what is left of it is a part `to` of the whole.
 * Nothing is asked at either end. O(log 1/to).
 */
export function bracket(low: number, high: number, holds: (value: number) => boolean, to = 1e-12): Bracket {
    let [last, first] = [low, high];
    for (let part = 1; part > to; part /= 2) {
        const middle = (last + first) / 2;
        if (holds(middle)) last = middle;
        else first = middle;
    }
    return { last, first };
}
