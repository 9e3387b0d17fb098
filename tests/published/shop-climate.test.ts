/**
 * Times in a cold shop: "every 10 degC more halves the time to gelation, typically 1.5 to 2.5 times as fast" (a technical article on
 * epoxy pot life, seen), and "for every 18 degF below 77 degF the pot life doubles" (answers of an epoxy maker, seen).
 */
import { describe, expect, it } from 'vitest';
import { climateFactor, humidityFactor, temperatureFactor } from '../../shared/bench/shop-climate';

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

describe('ten degrees', () => {
    it('halve what is left of the time above what sheets are written for, and double it below', () => {
        expect(temperatureFactor(35)).toEqual({ value: 0.5, low: 0.4, high: 1 / 1.5 });
        expect(temperatureFactor(10)).toEqual({ value: 2, low: 1.5, high: 2.5 });
    });
    it('18 degF are 10 degC: 59 degF doubles what holds at 77 degF, within the range that sheets leave', () => {
        expect(celsius(77) - celsius(59)).toBeCloseTo(10, 9);
        const { low, value, high } = temperatureFactor(celsius(77) - 10);
        expect(low).toBeLessThan(2);
        expect(value).toBeCloseTo(Math.SQRT2, 9); // sheets hold from 20 degC up, so that only 5 of the 10 degrees count
        expect(high).toBeGreaterThan(1.5);
    });
    it('agree with two more notes: half for 10 degC (a maker of adhesives), half for 15 degC (a maker of grout); both seen', () => {
        expect(temperatureFactor(35).value / temperatureFactor(25).value).toBeCloseTo(0.5, 9);
        const { low, high } = temperatureFactor(35);
        const grout = 2 ** (-10 / 15);
        expect(grout).toBeGreaterThan(low);
        expect(grout).toBeLessThan(high);
    });
    it('tell a cure at 30 degC longer than a glossary of coatings, which halves its 20 degC there (seen): sheets hold to 25', () => {
        const { value, low } = temperatureFactor(30);
        expect(value).toBeCloseTo(Math.SQRT1_2, 9);
        expect(value).toBeGreaterThan(0.5);
        expect(low).toBeLessThan(0.65);
    });
    it('leave the times of sheets as they are from 20 to 25 degC', () => {
        for (const warm of [20, 22, 25]) expect(temperatureFactor(warm)).toEqual({ value: 1, low: 1, high: 1 });
    });
});

describe('damp air (evaporation goes with what the air still takes up, from memory)', () => {
    it('75 % halves what 50 % leaves, and water takes twice as long', () => {
        expect(humidityFactor(0.5)).toBe(1);
        expect(humidityFactor(0.75)).toBe(2);
        expect(humidityFactor(1)).toBe(10);
    });
    it('matters to what sets by water alone; what cools is left as it is', () => {
        expect(climateFactor('water', 20, 0.75).value).toBe(2);
        expect(climateFactor('reaction', 20, 0.75).value).toBe(1);
        expect(climateFactor('cooling', 5, 0.75).value).toBe(1);
        expect(climateFactor(undefined, 5, 0.9).value).toBe(1);
        expect(climateFactor('reaction', undefined, 0.9).value).toBe(1);
    });
});
