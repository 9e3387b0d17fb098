import type { Interval } from '../../quantity/interval';
import type { Quantity } from '../../quantity/quantity';

/** Half width of a check without one, mm: what a gauge of hundredths can tell. @commonPractice */
const GAUGE = 0.005;

/** What a check lets pass, mm. */
export function checkRange({ value, tolerance }: Quantity): Interval {
    const half = Math.max(tolerance, GAUGE);
    return { value, low: value - half, high: value + half };
}

/** A tone is judged by eye: without a range of its own, five per cent either way will do. @commonPractice */
export function toneRange({ value, tolerance }: Quantity): Interval {
    const half = tolerance > 0 ? tolerance : 0.05;
    return { value, low: value - half, high: value + half };
}
