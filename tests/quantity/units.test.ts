import { describe, expect, it } from 'vitest';
import { fromBase, toBase } from '../../shared/quantity/quantity';

/** BIPM, The International System of Units, 9th edition (2019), tables 4 and 8: 1° = (π/180) rad; the plane angle's own unit is m/m = 1 (from memory). */
describe('angles', () => {
    it('are ratios of arc to radius: an arc as long as the radius is one radian', () => expect(toBase(1, 'rad')).toBe(1));
    it('of half a turn are 180 degrees and π radians', () => {
        expect(fromBase(toBase(Math.PI, 'rad')!, 'deg')).toBeCloseTo(180, 12);
        expect(fromBase(toBase(180, 'deg')!, 'rad')).toBeCloseTo(Math.PI, 12);
    });
});
