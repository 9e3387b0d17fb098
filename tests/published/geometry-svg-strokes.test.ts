/**
 * W3C, Scalable Vector Graphics (SVG) 1.1 (Second Edition), 2011, section 11.4, stroke properties.
 * The sentences on stroke-miterlimit were read in documentation that quotes the section; the
 * section itself could not be opened.
 */
import { describe, expect, test } from 'vitest';
import { dash } from '../../shared/geometry/dash';
import { bounds } from '../../shared/geometry/measure';
import { widen } from '../../shared/geometry/widen';

/** How far the join of two segments that meet at an angle in degrees reaches from the corner, for a stroke of width 2. */
function reach(degrees: number, miterLimit: number): number {
    const half = (degrees * Math.PI) / 360;
    const points = Float64Array.of(-20 * Math.cos(half), -20 * Math.sin(half), 0, 0, -20 * Math.cos(half), 20 * Math.sin(half));
    return bounds(widen([{ points, closed: false }], { width: 2, cap: 'butt', join: 'miter', miterLimit }))!.maxX;
}

describe('stroke-miterlimit', () => {
    test.each([30, 45, 60, 90, 120, 170])('miter length / stroke width = 1 / sin(angle / 2), at %i degrees', (degrees) => {
        const sin = Math.sin((degrees * Math.PI) / 360);
        // Half of the miter's length lies beyond the corner.
        expect(reach(degrees, 100)).toBeCloseTo(1 / sin, 3);
        expect(reach(degrees, 1.001 / sin)).toBeCloseTo(1 / sin, 3);
        expect(reach(degrees, 0.999 / sin)).toBeCloseTo(sin, 3);
    });

    test.each([
        // biome-ignore lint/suspicious/noApproximativeNumericConstant: as the standard prints it.
        [1.414, 90],
        [4, 29],
        [10, 11.5],
    ])('a limit of %f bevels below about %f degrees', (limit, degrees) => {
        expect(reach(degrees + 0.5, limit)).toBeGreaterThan(1.3);
        expect(reach(degrees - 0.5, limit)).toBeLessThan(1);
    });
});

test('stroke-dasharray: an odd list is repeated, so 5,3,2 means 5,3,2,5,3,2', () => {
    const line = [{ points: Float64Array.of(0, 0, 100, 0), closed: false }];
    expect(dash(line, [5, 3, 2], 1)).toEqual(dash(line, [5, 3, 2, 5, 3, 2], 1));
});
