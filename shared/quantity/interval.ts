import type { Quantity } from './quantity';

/** A number with the range in which it is expected to lie. Same unit throughout; low <= value <= high. */
export interface Interval {
    readonly value: number;
    readonly low: number;
    readonly high: number;
}

export function exactly(value: number): Interval {
    return { value, low: value, high: value };
}

export function intervalOf(quantity: Quantity): Interval {
    return { value: quantity.value, low: quantity.value - quantity.tolerance, high: quantity.value + quantity.tolerance };
}

/** Worst case: every part at its bad end at once. */
export function add(a: Interval, b: Interval): Interval {
    return { value: a.value + b.value, low: a.low + b.low, high: a.high + b.high };
}

export function subtract(a: Interval, b: Interval): Interval {
    return { value: a.value - b.value, low: a.low - b.high, high: a.high - b.low };
}

export function atLeast(a: Interval, floor: number): Interval {
    return { value: Math.max(floor, a.value), low: Math.max(floor, a.low), high: Math.max(floor, a.high) };
}

/** Half the width to the further end: what stands after `+-`. */
export function spread(a: Interval): number {
    return Math.max(a.high - a.value, a.value - a.low);
}

/** Reaches much further to one side, as what is known to a factor does: one figure for both sides would mislead. */
export function isLopsided(a: Interval): boolean {
    const up = a.high - a.value;
    const down = a.value - a.low;
    return Math.max(up, down) > 1.5 * Math.min(up, down);
}

/**
 * Sum of signed parts, the expected range when they are independent, against the worst case of `add`. What pushes
 * the sum up and what pushes it down are each combined as a root of squares, so that it never reaches past the worst
 * case at either end. (Root-sum-square stacking, check values in tests/published/tolerance-stack.test.ts.)
 * @commonPractice The two sides of uneven parts are taken by themselves.
 */
export function rootSumSquare(parts: readonly { readonly of: Interval; readonly sign: 1 | -1 }[]): Interval {
    let value = 0;
    let squaresUp = 0;
    let squaresDown = 0;
    for (const { of, sign } of parts) {
        value += sign * of.value;
        const above = (of.high - of.value) ** 2;
        const below = (of.value - of.low) ** 2;
        squaresUp += sign > 0 ? above : below;
        squaresDown += sign > 0 ? below : above;
    }
    return { value, low: value - Math.sqrt(squaresDown), high: value + Math.sqrt(squaresUp) };
}
