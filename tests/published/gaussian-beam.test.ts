import { describe, expect, it } from 'vitest';
import { depthOfFocus, diameterAt, rayleighRange, type Spot, spotDiameter } from '../../shared/burn/beam';

/*
 * Focused Gaussian beams: wavelength, M2, focal length, beam diameter on the lens, then spot diameter, Rayleigh range,
 * twice that, and depth of focus for 5 and 10 per cent of growth; all mm. Worked out from the formulas of Siegman, Lasers,
 * 1986, ch. 17 and Saleh & Teich, Fundamentals of Photonics, sections 3.1 and 3.2 (from memory).
 */
const table = [
    [10.6e-3, 1.0, 50.8, 7, 0.097945, 0.7108, 1.4216, 0.45513, 0.65146],
    [10.6e-3, 1.2, 50.8, 7, 0.117534, 0.85296, 1.70592, 0.54616, 0.78175],
    [10.6e-3, 1.3, 38.1, 6, 0.111412, 0.70747, 1.41494, 0.453, 0.64841],
    [10.6e-3, 1.2, 101.6, 7, 0.235068, 3.41184, 6.82368, 2.18464, 3.127],
    [450e-6, 1.0, 50, 5, 0.0057296, 0.057296, 0.114592, 0.036687, 0.052512],
    [450e-6, 10, 30, 4, 0.0429718, 0.322289, 0.644578, 0.206365, 0.295383],
];

/** Agreement to all digits of the table. */
function expectDigits(value: number, expected: number): void {
    expect(Math.abs(value / expected - 1)).toBeLessThan(1e-5);
}

function focusOf(wavelength: number, quality: number, lens: number, aperture: number): Spot {
    const diameter = spotDiameter(wavelength, quality, lens, aperture);
    return { diameter, rayleigh: rayleighRange(diameter, wavelength, quality), quality, qualityAssumed: false, from: 'lens' };
}

describe('a focused beam', () => {
    it.each(table)(
        'of %d mm, M2 %d, lens %d mm, beam %d mm',
        (wavelength, quality, lens, aperture, diameter, rayleigh, twice, five, ten) => {
            const focus = focusOf(wavelength!, quality!, lens!, aperture!);
            expectDigits(focus.diameter, diameter!);
            expectDigits(focus.rayleigh!, rayleigh!);
            expectDigits(2 * focus.rayleigh!, twice!);
            expectDigits(depthOfFocus(focus, 0.05)!, five!);
            expectDigits(depthOfFocus(focus, 0.1)!, ten!);
        },
    );

    it('widens away from the focus', () => {
        expectDigits(diameterAt(focusOf(10.6e-3, 1.2, 50.8, 7), 2), 0.299607);
    });

    // Saleh & Teich, exercise 3.1-1 (from memory): a HeNe beam of 633 nm with 2W0 = 0.1 mm has 2z0 = 24.8 mm.
    it('agrees with the exercise of a HeNe beam', () => {
        expect(2 * rayleighRange(0.1, 633e-6, 1)).toBeCloseTo(24.815, 3);
    });
});
