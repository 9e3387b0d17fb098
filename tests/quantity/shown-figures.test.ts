/** What is shown, read back: it must say what it was made from, as closely as it claims to and in the unit that was asked for. */
import { describe, expect, it } from 'vitest';
import { bracket } from '../../shared/quantity/bracket';
import { momentOf } from '../../shared/quantity/calendar';
import { compareText } from '../../shared/quantity/compare-text';
import { showMoney } from '../../shared/quantity/currency';
import { fromBase, type Quantity, toBase } from '../../shared/quantity/quantity';
import {
    showArea,
    showLength,
    showLengthInterval,
    showMass,
    showQuantity,
    showRatio,
    showSpeed,
    showTime,
    showVolume,
} from '../../shared/quantity/show';
import { nowhere } from '../../shared/quantity/where';

/** Of a figure with its unit: the number, and how many digits it has behind the point. */
function read(text: string): { value: number; digits: number; unit: string } {
    const [, number, fraction = '', unit] = /^(-?\d+(?:\.(\d+))?) (\S+)$/.exec(text)!;
    return { value: Number(number), digits: fraction.length, unit: unit! };
}

/** Values between two ends, evenly by their logarithm. */
function between(low: number, high: number, count = 60): number[] {
    return Array.from({ length: count }, (_, at) => low * (high / low) ** (at / (count - 1)));
}

describe('units', () => {
    it.each([
        // By definition: the inch is 25.4 mm, the pound 453.59237 g and 16 ounces, a full turn 2 π (NIST SP 811, from memory).
        [1, 'in', 25.4],
        [1, 'thou', 0.0254],
        [1, 'lb', 453.592_37],
        [16, 'oz', 453.592_37],
        [180, 'deg', Math.PI],
        [2, 'rad', 2],
        [212, 'degF', 100],
        [32, 'degF', 0],
        [1, 'g/cm3', 1e-3],
        [1000, 'kg/m3', 1e-3],
        [3, 'kW', 3000],
        [50, '%', 0.5],
        [1, 'in2', 645.16],
        [60, 'mm/min', 1],
        [60, 'in/min', 25.4],
    ])('%d %s are %d in base units, and back', (written, unit, base) => {
        expect(toBase(written, unit)).toBeCloseTo(base, 9);
        expect(fromBase(base, unit)).toBeCloseTo(written, 9);
    });

    it('that nobody knows leave a number as it is, and stand for nothing', () => {
        expect(toBase(7, 'cubit')).toBeUndefined();
        expect(fromBase(7, 'cubit')).toBe(7);
    });
});

describe('lengths', () => {
    it.each([
        ['mm', 2, 1],
        ['cm', 3, 10],
        ['m', 4, 1000],
        ['in', 3, 25.4],
        ['thou', 0, 0.0254],
        ['um', 0, 0.001],
    ])('in %s have at most %i digits behind the point, and are no further off than these allow', (unit, most, size) => {
        for (const mm of between(0.2, 900)) {
            const { value, digits, unit: shown } = read(showLength(mm, unit));
            expect(shown).toBe(unit);
            expect(digits).toBeLessThanOrEqual(most);
            expect(Math.abs(value - mm / size)).toBeLessThanOrEqual(0.5 * 10 ** -most + 1e-9);
        }
    });

    it('below a tenth of a millimetre have a digit more, from there on not, and nothing has none', () => {
        expect([0.0994, -0.0994, 0.1004, 0].map((mm) => showLength(mm))).toEqual(['0.099 mm', '-0.099 mm', '0.1 mm', '0 mm']);
    });

    it('are in millimetres where the unit is no length', () => {
        expect(showLength(12, 'deg')).toBe('12 mm');
        expect(showLengthInterval({ value: 12, low: 11.9, high: 12.1 }, 'deg')).toBe('12 mm ± 0.1 mm');
    });

    it('have their spread in the same unit', () => {
        const within = { value: 50.8, low: 50.8 - 0.254, high: 50.8 + 0.254 };
        expect(showLengthInterval(within, 'in')).toBe('2 in ± 0.01 in');
        expect(showLengthInterval(within, 'cm')).toBe('5.08 cm ± 0.025 cm');
    });

    it('as they were written keep the digits of their unit; other quantities have three', () => {
        const quantity = (value: number, unit: string, dimension: Quantity['dimension'], tolerance = 0): Quantity => ({
            ...{ value, unit, dimension, tolerance, where: nowhere },
        });
        expect(showQuantity(quantity(12.3456, 'mm', 'length'))).toBe('12.35 mm');
        expect(showQuantity(quantity(12.345_67, 'W', 'power'))).toBe('12.346 W');
        // A tolerance is a difference: the offset of a scale does not go into it.
        expect(showQuantity(quantity(20, 'degF', 'temperature', 5))).toBe('68 ± 9 degF');
    });
});

describe('other figures', () => {
    it.each([
        ['areas', showArea, (mm2: number) => (mm2 < 1000 ? [mm2, 'mm²', 1] : [mm2 / 100, 'cm²', 1]), 3, 90_000],
        ['volumes', showVolume, (mm3: number) => [mm3 / 1000, 'ml', mm3 < 10_000 ? 2 : 1], 30, 900_000],
        ['masses', showMass, (g: number) => [g, 'g', g < 10 ? 2 : 1], 0.5, 400],
        ['shares', showRatio, (share: number) => [share * 100, '%', share < 0.1 ? 1 : 0], 0.01, 0.99],
        ['speeds', showSpeed, (speed: number) => [speed, 'mm/s', 0], 2, 900],
        ['speeds in inches', (mm: number) => showSpeed(mm, 'in/s'), (mm: number) => [mm / 25.4, 'in/s', 1], 2, 900],
    ] as const)('%s are as close as their digits', (_, show, of, low, high) => {
        let finest = 0;
        for (const each of between(low, high)) {
            const { value, digits, unit } = read(show(each));
            const [exact, name, most] = of(each) as [number, string, number];
            expect(unit).toBe(name);
            expect(digits).toBeLessThanOrEqual(most);
            expect(Math.abs(value - exact)).toBeLessThanOrEqual(0.5 * 10 ** -most + 1e-9);
            finest = Math.max(finest, digits);
        }
        expect(finest).toBe(Math.max(...[low, high].map((each) => of(each)[2] as number)));
    });

    it('an amount is written out up to a million millions, and in powers of ten from there', () => {
        expect(showMoney(999_999_999_999, 'EUR')).toBe('999999999999.00 EUR');
        expect(showMoney(1e12, 'EUR')).toBe('1.00e+12 EUR');
        expect(showMoney(-2e12, 'EUR')).toBe('-2.00e+12 EUR');
    });

    it('a time is two parts at most, no further off than half the smaller of them', () => {
        const seconds: Readonly<Record<string, number>> = { d: 86_400, h: 3600, min: 60, s: 1 };
        for (const each of between(0.6, 3e6, 200)) {
            const parts = [...showTime(each).matchAll(/(\d+) (d|h|min|s)/g)].map(
                ([, count, unit]) => [Number(count), unit!] as const,
            );
            expect(parts.length).toBeGreaterThan(0);
            expect(parts.length).toBeLessThanOrEqual(2);
            expect(parts.every(([count]) => count > 0)).toBe(true);
            const sum = parts.reduce((total, [count, unit]) => total + count * seconds[unit]!, 0);
            // Days and hours leave the minutes out, a minute is rounded from ten on, a second before.
            const off = each >= 86_370 ? 3600 : each >= 600 ? 30 : 0.5;
            expect(Math.abs(sum - each), `${each} s: ${showTime(each)}`).toBeLessThanOrEqual(off + 1e-9);
        }
        expect([0.49, 0.5].map(showTime)).toEqual(['0 s', '1 s']);
    });

    it('a moment may have room around it', () => {
        expect(momentOf(' 2026-12-01T08:00\n')).toBe(momentOf('2026-12-01T08:00'));
        expect(momentOf('2026-12-01T08:00')).toBeDefined();
    });
});

describe('order and halving', () => {
    it('texts that are the same are neither before nor after', () => {
        expect([compareText('a', 'b'), compareText('b', 'a'), compareText('a', 'a')]).toEqual([-1, 1, 0]);
    });

    it('halves until what is left is the part that was asked for, and not once more', () => {
        let asked = 0;
        const holds = (value: number): boolean => {
            asked++;
            return value < 5.3;
        };
        const { last, first } = bracket(2, 10, holds, 1 / 64);
        expect(asked).toBe(6);
        expect(first - last).toBe(8 / 64);
        expect([last < 5.3, first >= 5.3]).toEqual([true, true]);
    });
});
