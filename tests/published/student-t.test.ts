import { describe, expect, it } from 'vitest';
import { coverageFactor, normalQuantile, studentQuantile } from '../../shared/burn/distributions';

/*
 * Student's t, one-sided probabilities .90, .95, .975, .99, .995 after the degrees of freedom.
 * NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2 (from memory; computed again independently).
 */
const probabilities = [0.9, 0.95, 0.975, 0.99, 0.995];
const table = [
    [1, 3.078, 6.314, 12.706, 31.821, 63.657],
    [2, 1.886, 2.92, 4.303, 6.965, 9.925],
    [3, 1.638, 2.353, 3.182, 4.541, 5.841],
    [4, 1.533, 2.132, 2.776, 3.747, 4.604],
    [5, 1.476, 2.015, 2.571, 3.365, 4.032],
    [6, 1.44, 1.943, 2.447, 3.143, 3.707],
    [7, 1.415, 1.895, 2.365, 2.998, 3.499],
    [8, 1.397, 1.86, 2.306, 2.896, 3.355],
    [9, 1.383, 1.833, 2.262, 2.821, 3.25],
    [10, 1.372, 1.812, 2.228, 2.764, 3.169],
    [12, 1.356, 1.782, 2.179, 2.681, 3.055],
    [15, 1.341, 1.753, 2.131, 2.602, 2.947],
    [20, 1.325, 1.725, 2.086, 2.528, 2.845],
    [24, 1.318, 1.711, 2.064, 2.492, 2.797],
    [30, 1.31, 1.697, 2.042, 2.457, 2.75],
    [34, 1.307, 1.691, 2.032, 2.441, 2.728],
    [40, 1.303, 1.684, 2.021, 2.423, 2.704],
    [60, 1.296, 1.671, 2.0, 2.39, 2.66],
    [120, 1.289, 1.658, 1.98, 2.358, 2.617],
];

describe('quantiles', () => {
    it.each(table)('of t with %d degrees of freedom', (freedom, ...expected) => {
        probabilities.forEach((probability, i) => {
            expect(Math.round(studentQuantile(probability, freedom!) * 1000) / 1000).toBe(expected[i]);
        });
    });

    it('of the normal distribution', () => {
        const expected = [1.281552, 1.644854, 1.959964, 2.326348, 2.575829];
        probabilities.forEach((probability, i) => {
            expect(normalQuantile(probability)).toBeCloseTo(expected[i]!, 6);
        });
    });

    it('as a two-sided factor', () => {
        expect(coverageFactor(0.95, 34)).toBeCloseTo(2.032245, 6);
        expect(coverageFactor(0.95, undefined)).toBeCloseTo(1.959964, 6);
    });
});
