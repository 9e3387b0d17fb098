import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../shared/burn/distributions';
import { type DriftPoint, driftOf, month } from '../../shared/burn/drift';

const at = (...ratios: readonly (readonly [day: number, ratio: number])[]): DriftPoint[] =>
    ratios.map(([day, ratio]) => ({ day, ratio }));

/** Numbers between 0 and 1, the same every time. */
function dice(seed: number): () => number {
    let state = seed;
    return () => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return (state + 0.5) / 2 ** 32;
    };
}

describe('drift over time', () => {
    it('too few days tell no slope, one tells no level either', () => {
        expect(driftOf([])).toEqual({ days: [], told: false });
        expect(driftOf(at([10, 0.9]))).toEqual({ days: [{ day: 10, ratio: 0.9 }], told: false });
        const two = driftOf(at([10, 0.9], [40, 1.1]));
        expect(two.level!.value).toBeCloseTo(1, 12);
        // t(0.975; 1) = 12.706 (any table), standard error 0.1.
        expect(two.level!.high - 1).toBeCloseTo(1.2706, 3);
        expect(two).not.toHaveProperty('slope');
    });

    it('squares of one day count as one, and days of one date tell nothing of time', () => {
        const { days, slope } = driftOf(at([5, 0.8], [5, 1.0], [5, 1.2]));
        expect(days).toHaveLength(1);
        expect(days[0]!.ratio).toBeCloseTo(1, 12);
        expect(slope).toBeUndefined();
    });

    it('a tube that fades is told, a scatter is not', () => {
        const fading = driftOf(at([0, 1], [30, 0.981], [60, 0.959], [90, 0.94], [120, 0.921]));
        expect(fading.slope!.value).toBeCloseTo(-0.02, 3);
        expect(fading.told).toBe(true);
        const scatter = driftOf(at([0, 1], [30, 0.95], [60, 1.04], [90, 0.97]));
        expect(scatter.told).toBe(false);
        expect(scatter.slope!.low).toBeLessThan(0);
        expect(scatter.slope!.high).toBeGreaterThan(0);
    });

    it('the range holds the true slope about as often as it says', () => {
        const roll = dice(20261127);
        let held = 0;
        const rounds = 600;
        for (let round = 0; round < rounds; round++) {
            const days = [0, 12, 40, 55, 90, 130];
            const points = days.map((day) => ({ day, ratio: 1 - (0.01 * day) / month + 0.03 * normalQuantile(roll()) }));
            const { slope } = driftOf(points);
            if (slope!.low <= -0.01 && -0.01 <= slope!.high) held++;
        }
        // 95 %; the count's own standard error is 0.9 %.
        expect(held / rounds).toBeGreaterThan(0.92);
        expect(held / rounds).toBeLessThan(0.98);
    });

    it('figures that are none are left out', () => {
        expect(driftOf(at([Number.NaN, 1], [1, Number.NaN], [2, -1], [3, 1e9])).days).toEqual([]);
    });
});
