import { describe, expect, it } from 'vitest';
import { pitchForRipple, ripple, sigmaOf } from '../../shared/burn/dose';
import { linePitch, pitchForSpot } from '../../shared/burn/pitch';

/** Half the swing of a row of Gaussians over one pitch, over its mean, added up line by line. */
function swing(pitch: number, sigma: number): number {
    const at = (x: number): number => {
        let sum = 0;
        for (let k = -400; k <= 400; k++)
            sum += (pitch / (sigma * Math.sqrt(2 * Math.PI))) * Math.exp(-((x - k * pitch) ** 2) / (2 * sigma * sigma));
        return sum;
    };
    return (at(0) - at(pitch / 2)) / 2;
}

describe('the ripple of scan lines', () => {
    it.each([0.05, 0.08, 0.1, 0.12])('is what the lines add up to at a pitch of %d mm', (pitch) => {
        // The first harmonic stands for the whole while the second is small.
        expect(Math.abs(ripple(pitch, 0.0375) - swing(pitch, 0.0375))).toBeLessThan(1e-3);
    });

    it('turns back into a pitch', () => {
        expect(ripple(pitchForRipple(0.0375, 0.05), 0.0375)).toBeCloseTo(0.05, 12);
    });

    it('gives a pitch of whole hundredths that ripples less than five per cent', () => {
        const spot = { diameter: 0.15, quality: 1, qualityAssumed: false, from: 'spot' } as const;
        expect(pitchForSpot(spot)).toBe(0.08);
        expect(ripple(0.08, sigmaOf(0.15))).toBeLessThan(0.05);
        expect(ripple(0.09, sigmaOf(0.15))).toBeGreaterThan(0.05);
        expect(pitchForSpot(undefined)).toBeUndefined();
    });
});

describe('a single line', () => {
    it('gives its middle the dose that its pitch gives an area', () => {
        // Power spread over a Gaussian across the line, integrated along it: P/v times the profile's peak.
        const peak = 1 / (sigmaOf(0.2) * Math.sqrt(2 * Math.PI));
        expect(1 / linePitch({ diameter: 0.2, quality: 1, qualityAssumed: false, from: 'spot' })!).toBeCloseTo(peak, 12);
    });
});
