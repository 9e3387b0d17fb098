import { describe, expect, it } from 'vitest';
import { parseViewBox, viewBoxMatrix } from '../../shared/art/frame/view-box';

/**
 * W3C, SVG 1.1 (Second Edition), sections 7.7 and 7.8, and SVG 2, section 8.2 ("Computing the
 * equivalent transform of an SVG viewport"). Scales and shifts worked out from its steps elsewhere.
 */
describe('a viewBox in a viewport', () => {
    const cases = [
        ['0 0 1500 1000', 300, 100, 'xMidYMid meet', [0.1, 0.1, 75, 0]],
        ['0 0 1500 1000', 300, 100, 'xMidYMid slice', [0.2, 0.2, 0, -50]],
        ['0 0 1500 1000', 300, 100, 'none', [0.2, 0.1, 0, 0]],
        ['10 20 100 50', 200, 200, 'xMidYMid meet', [2, 2, -20, 10]],
        ['10 20 100 50', 200, 200, undefined, [2, 2, -20, 10]],
        ['10,20,100,50', 200, 200, 'xMaxYMax meet', [2, 2, -20, 60]],
    ] as const;
    for (const [box, width, height, fit, [scaleX, scaleY, shiftX, shiftY]] of cases) {
        it(`${box} in ${width} x ${height}, ${fit ?? 'as usual'}`, () => {
            const { a, b, c, d, e, f } = viewBoxMatrix(parseViewBox(box)!, width, height, fit);
            expect([b, c]).toEqual([0, 0]);
            expect(a).toBeCloseTo(scaleX, 12);
            expect(d).toBeCloseTo(scaleY, 12);
            expect(e).toBeCloseTo(shiftX, 9);
            expect(f).toBeCloseTo(shiftY, 9);
        });
    }

    it('counts for nothing without an area, or with a number too few or too many', () => {
        for (const text of ['0 0 0 10', '0 0 10 -1', '0 0 10', '0 0 10 10 10', 'a b c d', '', undefined]) {
            expect(parseViewBox(text)).toBeUndefined();
        }
    });
});
