/**
 * CIEDE2000: Sharma, Wu and Dalal, Color Research and Application 30(1), 2005, Table 1. Colours of
 * sRGB (IEC 61966-2-1) in CIELAB for D65 and 2 degrees: computed from the standards' formulas.
 */
import { converter, differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import { blend, contrast } from '../../shared/bench/contrast';

type Lab = readonly [number, number, number];
const pairs: readonly (readonly [number, Lab, Lab, number])[] = [
    [1, [50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [2, [50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
    [3, [50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
    [4, [50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
    [7, [50, 0, 0], [50, -1, 2], 2.3669],
    [8, [50, -1, 2], [50, 0, 0], 2.3669],
    [9, [50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
    [10, [50, 2.49, -0.001], [50, -2.49, 0.001], 7.1792],
    [13, [50, -0.001, 2.49], [50, 0.0009, -2.49], 4.8045],
    [14, [50, -0.001, 2.49], [50, 0.001, -2.49], 4.8045],
    [15, [50, -0.001, 2.49], [50, 0.0011, -2.49], 4.7461],
    [16, [50, 2.5, 0], [50, 0, -2.5], 4.3065],
    [17, [50, 2.5, 0], [73, 25, -18], 27.1492],
    [18, [50, 2.5, 0], [61, -5, 29], 22.8977],
    [19, [50, 2.5, 0], [56, -27, -3], 31.903],
    [21, [50, 2.5, 0], [50, 3.1736, 0.5854], 1.0],
    [22, [50, 2.5, 0], [50, 3.2972, 0], 1.0],
    [23, [50, 2.5, 0], [50, 1.8634, 0.5757], 1.0],
    [24, [50, 2.5, 0], [50, 3.2592, 0.335], 1.0],
    [25, [60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
    [27, [61.2901, 3.7196, -5.3901], [61.4292, 2.248, -4.962], 1.8731],
    [28, [35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645],
    [30, [36.4612, 47.858, 18.3852], [36.2715, 50.5065, 21.2231], 1.4146],
    [32, [90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
    [34, [2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
];
const lab = ([l, a, b]: Lab) => ({ mode: 'lab65', l, a, b }) as const;

describe('the library we take the difference from', () => {
    const difference = differenceCiede2000();
    for (const [number, one, other, expected] of pairs) {
        it(`pair ${number}, both ways round`, () => {
            expect(difference(lab(one), lab(other))).toBeCloseTo(expected, 4);
            expect(difference(lab(other), lab(one))).toBeCloseTo(expected, 4);
        });
    }
    it('turns sRGB into CIELAB', () => {
        const toLab = converter('lab65');
        for (const [hex, l, a, b] of [
            ['#ffffff', 100, 0, 0],
            ['#ff0000', 53.2408, 80.0925, 67.2032],
            ['#00ff00', 87.7347, -86.1827, 83.1793],
            ['#0000ff', 32.297, 79.1875, -107.8602],
            ['#808080', 53.585, 0, 0],
            ['#5c4433', 30.9941, 7.8036, 14.3072],
            ['#e8d4a8', 85.5401, 0.3224, 24.3286],
        ] as const) {
            const found = toLab(hex)!;
            for (const [value, expected] of [
                [found.l, l],
                [found.a, a],
                [found.b, b],
            ] as const)
                expect(Math.abs(value - expected)).toBeLessThan(0.02);
        }
    });
});

describe('contrast', () => {
    it('of a dark and a light wood (computed from the same formulas)', () => {
        expect(Math.abs(contrast('#5c4433', '#e8d4a8')! - 50.3508)).toBeLessThan(0.01);
    });
    it('is nothing for the same colour and has no answer for what is none', () => {
        expect(contrast('#5c4433', '#5C4433')).toBe(0);
        expect(contrast('#5c4433', '#zzz')).toBeUndefined();
        expect(contrast('', '#000')).toBeUndefined();
    });
    it('blends as light does', () => {
        expect(blend('#000000', '#ffffff', 0)).toBe('#000000');
        expect(blend('#000000', '#ffffff', 1)).toBe('#ffffff');
        // Half the light of white is 188 in sRGB: 1.055 x 0.5^(1/2.4) - 0.055.
        expect(blend('#000000', '#ffffff', 0.5)).toBe('#bcbcbc');
        expect(blend('#123456', 'no colour', 0.5)).toBe('#123456');
        expect(blend('#123456', '#ffffff', 7)).toBe('#ffffff');
    });
});
