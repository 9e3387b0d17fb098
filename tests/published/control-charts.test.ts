import { describe, expect, it } from 'vitest';
import { againstEarlier, ewmaChart } from '../../shared/burn/control-chart';

/*
 * NIST/SEMATECH e-Handbook of Statistical Methods (public domain), 6.3.2.4 "EWMA Control Charts", worked example: a process with
 * EWMA0 = 50, s = 2.0539 and λ = 0.3, limits at three standard errors. Data, s, λ and the chart's values are from memory; that
 * EWMA0 is 50 was seen again in a quotation of the page.
 */
const data = [
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1,
];
const means = [
    50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23,
    51.94, 51.99,
];

describe('the handbook’s chart of exponentially weighted means', () => {
    const chart = ewmaChart(data, { centre: 50, sigma: 2.0539, weight: 0.3, width: 3 });

    it('has its means, to the digits that it prints', () => {
        for (const [index, { mean }] of chart.entries())
            expect(Math.abs(mean - means[index]!), `value ${index}`).toBeLessThan(0.0051);
    });
    it('has its limits once the first values are past, and finds the process in control', () => {
        expect(chart.at(-1)!.high).toBeCloseTo(52.5884, 3);
        expect(chart.at(-1)!.low).toBeCloseTo(47.4115, 3);
        expect(chart.every(({ mean, low, high }) => low < mean && mean < high)).toBe(true);
        // Before, they are those of fewer values: of one, the width of a Shewhart chart on its share of the mean.
        expect(chart[0]!.high - 50).toBeCloseTo(3 * 0.3 * 2.0539, 12);
    });
});

describe('each value against those before it', () => {
    const plain = (values: readonly number[]) => againstEarlier(values.map((value) => ({ value, error: 1, rounding: 0 })));

    it('is Student’s t turned into a normal quantile', () => {
        // t = (4 − 1)/(√2 · √(1 + 1/2)) = √3 with one degree of freedom: 60° of the Cauchy, probability 1/2 + 1/3.
        expect(plain([0, 2, 4])[0]).toBeCloseTo(0.9674, 4); // Φ⁻¹(5/6) = 0.96742, any table
    });
    it('does not change with the level or the unit of what is measured', () => {
        const first = plain(data);
        const other = plain(data.map((value) => 1000 - 7 * value));
        for (const [index, value] of first.entries()) expect(other[index]).toBeCloseTo(-value, 9);
    });
    it('what never scatters says nothing, and the first that does is no chance', () => {
        expect(plain([1, 1, 1, 1])).toEqual([0, 0]);
        expect(plain([1, 1, 2])[0]).toBe(8);
        // A gauge in steps of 1 may do so by chance.
        const rounded = [1, 1, 1, 2].map((value) => ({ value, error: 1, rounding: 12 ** -0.5 }));
        expect(againstEarlier(rounded).at(-1)).toBeLessThan(3);
    });
});
