import { describe, expect, it } from 'vitest';
import { isPhysical, millimetresPerPixel, splitLength, toPixels } from '../../shared/art/frame/length';

const context = { width: 400, height: 300, fontSize: 10, rootFontSize: 16 };
const px = (text: string) => toPixels(text, 'x', context)!;

/** W3C, CSS Values and Units Module Level 3, section 6.2: 1in = 2.54cm = 96px, and the rest from that (ratios from memory). */
describe('absolute units', () => {
    for (const [written, pixels] of [
        ['1in', 96],
        ['2.54cm', 96],
        ['25.4mm', 96],
        ['101.6Q', 96],
        ['72pt', 96],
        ['6pc', 96],
        ['96px', 96],
        ['96', 96],
        ['1pt', 1.333333],
        ['1cm', 37.795276],
        ['1E1MM', 37.795276],
        ['-.5in', -48],
    ] as const) {
        it(`${written} is ${pixels} px`, () => expect(px(written)).toBeCloseTo(pixels, 5));
    }

    it('a px is 0.264583 mm', () => expect(millimetresPerPixel).toBeCloseTo(0.264583, 6));

    it('knows which a ruler knows', () => {
        expect(['1mm', '1cm', '1in', '1pt', '1pc', '1q'].every(isPhysical)).toBe(true);
        expect(['1', '1px', '50%', '1em', 'auto', '1furlong'].some(isPhysical)).toBe(false);
    });
});

/** Same, section 5; for percentages W3C SVG 2, section 8.9 (of width, height, or the diagonal over √2). */
describe('relative units', () => {
    it('go by font size, viewport and diagonal', () => {
        expect([px('2em'), px('2rem'), px('2ex'), px('50%'), px('10vw'), px('10vh')]).toEqual([20, 32, 10, 200, 40, 30]);
        expect(toPixels('50%', 'y', context)).toBe(150);
        expect(toPixels('100%', 'diagonal', context)).toBeCloseTo(353.553, 3);
    });

    it('an e after a number is an exponent only before a digit', () => {
        expect(splitLength('1e3')).toEqual({ number: 1000, unit: '' });
        expect(splitLength('1em')).toEqual({ number: 1, unit: 'em' });
        expect(splitLength('1e3em')).toEqual({ number: 1000, unit: 'em' });
    });

    it('what is not a length is none', () => {
        for (const text of ['', 'mm', '1 2', 'calc(1px + 2px)', '1e999', '--1', 'constructor', '1constructor']) {
            expect(toPixels(text, 'x', context)).toBeUndefined();
        }
    });
});
