import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { readBitmap } from '../../shared/art/bitmap';
import { readHeader } from '../../shared/art/raster/header';
import { jpegOf, withChunk } from '../art/pictures';

const black = encode({ width: 300, height: 100, channels: 1, data: new Uint8Array(30_000) });

function pHYs(x: number, y: number, unit: number): Uint8Array {
    const data = new Uint8Array(9);
    new DataView(data.buffer).setUint32(0, x);
    new DataView(data.buffer).setUint32(4, y);
    data[8] = unit;
    return data;
}

/** W3C, Portable Network Graphics (PNG) Specification, 11.3.5.3 pHYs: pixels per unit across and down, unit 1 the metre. */
describe('PNG pHYs', () => {
    it('300 dots an inch are stored as 11811 a metre, and come back as 299.9994', () => {
        const density = readHeader(withChunk(black, 'pHYs', pHYs(11_811, 11_811, 1)))!.density!;
        expect(density.x * 25.4).toBeCloseTo(299.9994, 6);
    });

    it('254 dots an inch are exactly 10000 a metre: 300 pixels are 30 mm', () => {
        const art = readBitmap(withChunk(black, 'pHYs', pHYs(10_000, 10_000, 1)));
        expect(art.page).toEqual({ width: 30, height: 10 });
        expect(art.physical).toBe(true);
        expect(art.problems).toEqual([]);
    });

    it('pixels need not be square', () => {
        expect(readBitmap(withChunk(black, 'pHYs', pHYs(10_000, 5_000, 1))).page).toEqual({ width: 30, height: 20 });
    });

    it('unit 0 says a ratio only, so the size is not known', () => {
        const art = readBitmap(withChunk(black, 'pHYs', pHYs(1, 1, 0)));
        expect(art.physical).toBe(false);
        expect(art.problems.map(({ kind }) => kind)).toEqual(['unsized']);
    });
});

/** E. Hamilton, JPEG File Interchange Format, Version 1.02, 1992: APP0 units 1 dots an inch, 2 dots a centimetre, 0 none (from memory). */
describe('JFIF density', () => {
    for (const [units, x, y, width] of [
        [1, 254, 254, 30],
        [2, 100, 100, 30],
    ] as const) {
        it(`units ${units}, ${x}: 300 pixels are ${width} mm`, () => {
            const art = readBitmap(jpegOf(300, 100, () => 0, { units, x, y }));
            expect(art.page.width).toBeCloseTo(width, 9);
            expect(art.physical).toBe(true);
        });
    }

    it('units 0 says nothing', () => {
        expect(readBitmap(jpegOf(300, 100, () => 0, { units: 0, x: 1, y: 1 })).physical).toBe(false);
    });
});
