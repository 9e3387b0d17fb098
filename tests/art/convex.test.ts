import { describe, expect, it } from 'vitest';
import { convexRing } from '../../shared/art/draw/convex';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area, contains, signedArea } from '../../shared/geometry/measure';

type Corner = readonly [x: number, y: number];

/** A square of 30 with a notch of 10 by 10 in one corner. */
const notched: readonly Corner[] = [
    [10, 10],
    [40, 10],
    [40, 30],
    [30, 30],
    [30, 40],
    [10, 40],
];
const square: readonly Corner[] = [
    [10, 10],
    [40, 10],
    [40, 40],
    [10, 40],
];

/** The same ring from each of its corners on, in both senses. */
function everyWay(corners: readonly Corner[]): Corner[][] {
    return [corners, corners.toReversed()].flatMap((ring) => ring.map((_, i) => [...ring.slice(i), ...ring.slice(0, i)]));
}

describe('a ring that is taken as it is', () => {
    it('is convex, and comes in the positive sense', () => {
        for (const corners of everyWay(square)) expect(signedArea(convexRing(Float64Array.from(corners.flat()))!)).toBe(900);
    });
    it('is never one with a notch, wherever it begins', () => {
        for (const corners of everyWay(notched)) expect(convexRing(Float64Array.from(corners.flat()))).toBeUndefined();
    });
    it('is never one that goes around twice', () => {
        const pentagram = [0, 2, 4, 1, 3].flatMap((k) => [Math.cos((2 * Math.PI * k) / 5), Math.sin((2 * Math.PI * k) / 5)]);
        expect(convexRing(Float64Array.from(pentagram))).toBeUndefined();
    });
});

describe('a polygon with a notch', () => {
    it('burns the same from whichever corner it is drawn', () => {
        for (const corners of everyWay(notched)) {
            const art = readSvg(
                `<svg width="100mm" height="100mm" viewBox="0 0 100 100"><polygon points="${corners.flat().join(' ')}"/></svg>`,
            );
            const region = painted(art, []);
            expect(area(region)).toBeCloseTo(800, 6);
            expect([contains(region, 20, 20), contains(region, 35, 35)]).toEqual([true, false]);
        }
    });
});
