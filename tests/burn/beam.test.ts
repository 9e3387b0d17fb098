import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { focusHeights, focusSteps, spotOf } from '../../shared/burn/beam';
import { quantity, shed } from './stock';

const { name, where } = shed;
const lens = {
    name,
    where,
    wavelength: quantity(10.6e-3, 'length'),
    lens: quantity(50.8, 'length'),
    aperture: quantity(7, 'length'),
};

describe('the spot of a machine', () => {
    it('is what is written, with the beam quality that lens and aperture then imply', () => {
        const spot = spotOf({ ...lens, spot: quantity(0.15, 'length') })!;
        expect(spot.diameter).toBe(0.15);
        expect(spot.quality).toBeCloseTo(0.15 / 0.097945, 4);
        expect(spot.qualityAssumed).toBe(false);
    });

    it('is worked out from the lens, with a usual quality where none is written', () => {
        expect(spotOf({ ...lens, quality: quantity(1, 'count') })).toMatchObject({ from: 'lens', qualityAssumed: false });
        expect(spotOf({ ...lens, quality: quantity(1, 'count') })!.diameter).toBeCloseTo(0.097945, 6);
        expect(spotOf(lens)).toMatchObject({ quality: 1.2, qualityAssumed: true });
    });

    it('takes the wavelength of its kind of beam', () => {
        const { wavelength, ...rest } = lens;
        const beam = { name: 'co2', where, wavelength, foilStops: true };
        expect(spotOf({ ...rest, beam })!.diameter).toBeCloseTo(spotOf(lens)!.diameter, 12);
        expect(spotOf(rest)).toBeUndefined();
        expect(spotOf(undefined)).toBeUndefined();
    });

    it('never is an odd number', () => {
        const odd = fc.oneof(fc.double(), fc.constantFrom(0, -1, 1e308, 1e-308, Number.NaN));
        fc.assert(
            fc.property(fc.array(odd, { minLength: 5, maxLength: 5 }), ([a, b, c, d, e]) => {
                const spot = spotOf({
                    name,
                    where,
                    wavelength: quantity(a!, 'length'),
                    lens: quantity(b!, 'length'),
                    aperture: quantity(c!, 'length'),
                    quality: quantity(d!, 'count'),
                    ...(e! > 0 && { spot: quantity(e!, 'length') }),
                });
                if (spot === undefined) return;
                expect(spot.diameter > 0 && Number.isFinite(spot.diameter)).toBe(true);
                expect(spot.rayleigh === undefined || (spot.rayleigh > 0 && Number.isFinite(spot.rayleigh))).toBe(true);
                expect(focusHeights(spot, e!, 5)).toHaveLength(5);
            }),
            { numRuns: 300, seed: 3 },
        );
    });
});

describe('the focus', () => {
    const spot = { diameter: 0.15, rayleigh: 1, quality: 1.2, qualityAssumed: false, from: 'spot' } as const;

    it.each([
        [0.5, 1],
        [1, 1],
        [1.01, 2],
        [3.5, 4],
    ])('for %d mm of depth wants %d heights', (depth, steps) => {
        expect(focusSteps(spot, depth!)).toBe(steps);
    });

    it('follows the floor down, never further from it than the Rayleigh range', () => {
        expect(focusHeights(spot, 2.4, 6)).toEqual([0, 0, 0.8, 0.8, 1.6, 1.6].map((height) => expect.closeTo(height, 12)));
        expect(focusHeights(spot, 0.5, 3)).toEqual([0, 0, 0]);
        expect(focusHeights(spot, 5, 2)).toEqual([0, 2.5]);
        const { rayleigh, ...unknown } = spot;
        expect(rayleigh).toBe(1);
        expect(focusHeights(unknown, 5, 2)).toEqual([0, 0]);
    });
});
