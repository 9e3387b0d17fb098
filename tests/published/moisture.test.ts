/**
 * Equilibrium moisture: Wood Handbook (FPL-GTR-190, 2010), Eq. 4-5 and Table 4-2, p. 4-4; the
 * coefficients in degrees Celsius are Simpson's, USDA FPL-RN-0268.
 */
import { describe, expect, it } from 'vitest';
import { equilibriumMoisture, keptMoisture } from '../../shared/bench/moisture';

const percent = (temperature: number, humidity: number): number => equilibriumMoisture(temperature, humidity)! * 100;

describe('Wood Handbook Table 4-2', () => {
    for (const [temperature, humidity, tabled] of [
        [21.1, 0.05, 1.3],
        [21.1, 0.2, 4.5],
        [21.1, 0.3, 6.2],
        [21.1, 0.4, 7.7],
        [21.1, 0.5, 9.2],
        [21.1, 0.8, 16.0],
        [21.1, 0.9, 20.5],
        [4.4, 0.5, 9.5],
    ] as const) {
        it(`${temperature} degC, ${humidity * 100} %`, () =>
            expect(Math.abs(percent(temperature, humidity) - tabled)).toBeLessThanOrEqual(0.05));
    }
});

describe('Eq. 4-5, computed to more digits with the same coefficients', () => {
    for (const [temperature, humidity, computed] of [
        [21.1, 0.05, 1.298],
        [21.1, 0.2, 4.492],
        [21.1, 0.3, 6.17],
        [21.1, 0.4, 7.699],
        [21.1, 0.5, 9.243],
        [21.1, 0.8, 15.99],
        [21.1, 0.9, 20.48],
        [4.4, 0.5, 9.516],
        [20, 0.5, 9.2711],
        [20, 0.65, 11.9963],
        [26.7, 0.45, 8.3104],
    ] as const) {
        it(`${temperature} degC, ${humidity * 100} %`, () => expect(percent(temperature, humidity)).toBeCloseTo(computed, 3));
    }
    it('agrees with the form in degrees Fahrenheit to 0.03 % (coefficients from memory)', () => {
        for (const celsius of [5, 15, 21.1, 30, 40]) {
            for (const h of [0.2, 0.4, 0.6, 0.8])
                expect(Math.abs(percent(celsius, h) - fahrenheit(celsius, h))).toBeLessThan(0.03);
        }
    });
});

function fahrenheit(celsius: number, h: number): number {
    const t = celsius * 1.8 + 32;
    const w = 330 + 0.452 * t + 0.00415 * t * t;
    const k = 0.791 + 0.000463 * t - 0.000000844 * t * t;
    const k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t;
    const k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t;
    const kh = k * h;
    return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh));
}

describe('bounds', () => {
    it('rises with humidity, and dry air leaves nothing', () => {
        expect(percent(20, 0)).toBe(0);
        for (let h = 0; h < 0.99; h += 0.01) expect(percent(20, h + 0.01)).toBeGreaterThan(percent(20, h));
    });
    it('has no answer outside of the table', () => {
        for (const [t, h] of [
            [-20, 0.5],
            [200, 0.5],
            [20, -0.1],
            [20, 1.1],
            [Number.NaN, 0.5],
            [20, Number.NaN],
        ] as const) {
            expect(equilibriumMoisture(t, h)).toBeUndefined();
        }
    });
    it('a year indoors swings it by about five per cent (common practice, no source)', () => {
        const swing = keptMoisture.indoors.high - keptMoisture.indoors.low;
        expect(swing).toBeGreaterThan(0.04);
        expect(swing).toBeLessThan(0.055);
    });
});
