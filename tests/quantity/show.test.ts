import { describe, expect, it } from 'vitest';
import { showLength, showLengthInterval, showNumber, showTime } from '../../shared/quantity/show';

describe('figures as a person writes them', () => {
    it.each([
        [0, '0 s'],
        [45, '45 s'],
        [200, '3 min 20 s'],
        [599.6, '10 min'],
        [7500, '2 h 5 min'],
        [43_200, '12 h'],
        [604_800, '7 d'],
        [3599, '1 h'],
        [90_000, '1 d 1 h'],
    ])('%d s is %s', (seconds, text) => expect(showTime(seconds)).toBe(text));
    it('lengths keep the maker’s unit', () => {
        expect(showLength(12)).toBe('12 mm');
        expect(showLength(25.4, 'in')).toBe('1 in');
        expect(showLength(0.05)).toBe('0.05 mm');
        expect(showLength(-0.001)).toBe('-0.001 mm');
    });
    it('a length and its spread have the same digits', () => {
        expect(showLengthInterval({ value: 0.54, low: 0.486, high: 0.594 })).toBe('0.54 mm ± 0.05 mm');
        expect(showLengthInterval({ value: 0.54, low: 0.536, high: 0.544 })).toBe('0.54 mm ± 0.004 mm');
        expect(showLengthInterval({ value: 12, low: 12, high: 12 })).toBe('12 mm');
        expect(showLengthInterval({ value: 0.8, low: 0.39, high: 1.63 })).toBe('0.8 mm (0.39 mm to 1.63 mm)');
        expect(showLengthInterval({ value: 0.16, low: -0.35, high: 0.43 })).toBe('0.16 mm (-0.35 mm to 0.43 mm)');
    });
    it('numbers have no trailing zeros and no minus before nought', () => {
        expect(showNumber(1.5)).toBe('1.5');
        expect(showNumber(-0.001)).toBe('0');
        expect(showNumber(100)).toBe('100');
        expect(showNumber(1e308)).toBe('1.00e+308');
        expect([Number.POSITIVE_INFINITY, Number.NaN].map((value) => showNumber(value))).toEqual(['endless', 'unknown']);
    });
});
