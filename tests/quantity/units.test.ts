import { describe, expect, it } from 'vitest';
import { fromBase, toBase } from '../../shared/quantity/quantity';
import { unitNamed } from '../../shared/quantity/units';

/** BIPM, The International System of Units, 9th edition (2019), tables 4 and 8: 1° = (π/180) rad; the plane angle's own unit is m/m = 1 (from memory). */
describe('angles', () => {
    it('are ratios of arc to radius: an arc as long as the radius is one radian', () => expect(toBase(1, 'rad')).toBe(1));
    it('of half a turn are 180 degrees and π radians', () => {
        expect(fromBase(toBase(Math.PI, 'rad')!, 'deg')).toBeCloseTo(180, 12);
        expect(fromBase(toBase(180, 'deg')!, 'rad')).toBeCloseTo(Math.PI, 12);
    });
});

/** Definition of the degree Fahrenheit: 9/5 of one Celsius, ice at 32, and both scales meet at −40 (from memory). */
describe('degrees of temperature', () => {
    it.each([
        [32, 0],
        [68, 20],
        [212, 100],
        [-40, -40],
    ])('%d degF are %d degC', (fahrenheit, celsius) => {
        expect(toBase(fahrenheit, 'degF')).toBeCloseTo(celsius, 9);
        expect(fromBase(celsius, 'degF')).toBeCloseTo(fahrenheit, 9);
    });
});

describe('a unit as it is printed', () => {
    it.each([
        ['µm', 'um'],
        ['μm', 'um'],
        ['mm/s²', 'mm/s2'],
        ['cm³', 'cm3'],
        ['°C', 'degC'],
    ])('%s is %s', (printed, name) => {
        expect(unitNamed(printed)?.name).toBe(name);
    });
    it('that there is not is no unit', () => {
        for (const name of ['', 'mm4', '²', 'furlong']) expect(unitNamed(name), name).toBeUndefined();
    });
});
