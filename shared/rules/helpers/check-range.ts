import type { Quantity } from '../../quantity/quantity';

/** Half width of a check without one, mm: what a gauge of hundredths can tell. @commonPractice */
const GAUGE = 0.005;

/** What a check lets pass, mm. */
export function checkRange({ value, tolerance }: Quantity): {
    readonly value: number;
    readonly low: number;
    readonly high: number;
} {
    const half = Math.max(tolerance, GAUGE);
    return { value, low: value - half, high: value + half };
}
