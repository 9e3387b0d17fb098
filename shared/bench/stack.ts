import { atLeast, type Interval, rootSumSquare, subtract } from '../quantity/interval';

/**
 * How a veneer half sits in its pocket, heights in mm from the board's first face, upwards.
 * `worst` takes every tolerance at its bad end, `likely` their root of squares.
 */
export interface InlayStack {
    /** Veneer above the face before sanding; negative when it lies below. */
    readonly proud: { readonly worst: Interval; readonly likely: Interval };
    /** Veneer thickness that is left once the face has been sanded down by `below`. */
    readonly left: { readonly worst: Interval; readonly likely: Interval };
}

/**
 * Stack of an inlay: proud = veneer - (depth - film); left = depth - film - below, and never more
 * than the veneer itself. All in mm.
 * @param rise how far the veneer's parts stand above what is left around them, which comes to lie on the board; without a limit where nothing is
 */
export function inlayStack(veneer: Interval, depth: Interval, film: Interval, below: Interval, rise?: Interval): InlayStack {
    const isHeld = rise !== undefined && rise.value < depth.value - film.value;
    const seat = isHeld ? rise : subtract(depth, film);
    const into = (sign: 1 | -1) =>
        isHeld
            ? [{ of: rise, sign }]
            : [
                  { of: depth, sign },
                  { of: film, sign: sign === 1 ? (-1 as const) : (1 as const) },
              ];
    const proud = {
        worst: subtract(veneer, seat),
        likely: rootSumSquare([{ of: veneer, sign: 1 }, ...into(-1)]),
    };
    const left = {
        worst: atLeast(capped(subtract(seat, below), veneer), 0),
        likely: atLeast(capped(rootSumSquare([...into(1), { of: below, sign: -1 }]), veneer), 0),
    };
    return { proud, left };
}

/** A sunken veneer keeps its own thickness: sanding the board does not reach it sooner than its face. */
function capped(a: Interval, limit: Interval): Interval {
    return { value: Math.min(a.value, limit.value), low: Math.min(a.low, limit.low), high: Math.min(a.high, limit.high) };
}
