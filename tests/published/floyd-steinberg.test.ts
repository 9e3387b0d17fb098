import { describe, expect, it } from 'vitest';
import { dither } from '../../shared/art/raster/dither';

/**
 * R. W. Floyd and L. Steinberg, "An adaptive algorithm for spatial greyscale", Proc. SID
 * 17(2):75-77, 1976: error 7/16 to the right, 3/16 below left, 5/16 below, 1/16 below right (shares
 * from memory). The patterns are worked out from them elsewhere: left to right in every row, light
 * from 128 on, errors off the edge dropped. 0 is black, 255 white.
 */
const cases: readonly (readonly [name: string, grey: readonly (readonly number[])[], light: readonly (readonly number[])[]])[] = [
    [
        '3 x 4 of 100',
        Array(3).fill([100, 100, 100, 100]),
        [
            [0, 255, 0, 0],
            [0, 255, 0, 255],
            [0, 255, 0, 0],
        ],
    ],
    [
        '4 x 4 of 128',
        Array(4).fill([128, 128, 128, 128]),
        [
            [255, 0, 255, 0],
            [0, 255, 0, 255],
            [255, 0, 255, 0],
            [0, 255, 0, 255],
        ],
    ],
    [
        'two rows from black to white',
        Array(2).fill([0, 64, 128, 192, 255]),
        [
            [0, 0, 255, 255, 255],
            [0, 0, 0, 255, 255],
        ],
    ],
];

describe('error diffusion', () => {
    for (const [name, grey, light] of cases) {
        it(name, () => {
            const darkness = Uint8Array.from(grey.flat(), (value) => 255 - value);
            const dots = dither({ columns: grey[0]!.length, rows: grey.length, darkness }, 'floyd-steinberg');
            expect([...dots]).toEqual(light.flat().map((value) => (value === 0 ? 1 : 0)));
        });
    }
});
