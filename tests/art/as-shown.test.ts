import { beforeAll, describe, expect, it } from 'vitest';
import { asShown } from '../../shared/art/compose/as-shown';
import type { Shading } from '../../shared/art/compose/shading';
import { darknessOf } from '../../shared/art/style/colour';
import { compare, witness } from './witness';

beforeAll(witness);

const stop = (at: number, [red, green, blue]: readonly number[]) => {
    const colour = { red: red! / 255, green: green! / 255, blue: blue! / 255, alpha: 1 };
    return { at, colour, darkness: darknessOf(colour), opacity: 1 };
};
const shape: Shading['shape'] = {
    matrix: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 },
    spread: 'pad',
    line: { x1: 0, y1: 0, x2: 1, y2: 0 },
};
const shadingOf = (...stops: Shading['stops']): Shading => ({ shape, stops });

/** As much of the way as looks dark, by looking at 200,000 places of it with each channel in steps. */
function darkShare(from: readonly number[], to: readonly number[], threshold: number): number {
    const places = 200_000;
    let dark = 0;
    for (let i = 0; i < places; i++) {
        const share = (i + 0.5) / places;
        const [red, green, blue] = from.map((value, channel) => Math.round(value + (to[channel]! - value) * share));
        if (1 - (0.2126 * red! + 0.7152 * green! + 0.0722 * blue!) / 255 > threshold) dark++;
    }
    return dark / places;
}

const pairs = [
    [
        [118, 134, 120],
        [140, 118, 160],
    ],
    [
        [255, 90, 40],
        [60, 150, 255],
    ],
    [
        [200, 100, 90],
        [90, 140, 160],
    ],
] as const;

describe('the edge of an opaque gradient', () => {
    it.each(pairs)('lies where the steps of its channels have it: from %s to %s', (from, to) => {
        const { stops } = asShown(shadingOf(stop(0, from), stop(1, to)), 0.5);
        expect(stops).toHaveLength(3);
        const isDarkFirst = stops[0]!.darkness > 0.5;
        expect(isDarkFirst ? stops[1]!.at : 1 - stops[1]!.at).toBeCloseTo(darkShare(from, to, 0.5), 4);
        expect(stops[1]!.darkness).toBe(0.5);
    });

    it('stays between two stops that are both darker or both lighter, and where the colours are not known', () => {
        const light = shadingOf(stop(0, [200, 200, 200]), stop(1, [250, 250, 250]));
        expect(asShown(light, 0.5)).toBe(light);
        const through = shadingOf({ ...stop(0, [0, 0, 0]), opacity: 0.5 }, stop(1, [250, 250, 250]));
        expect(asShown(through, 0.5)).toBe(through);
        const { colour: _, ...plain } = stop(0, [0, 0, 0]);
        const mask = shadingOf(plain, stop(1, [250, 250, 250]));
        expect(asShown(mask, 0.5)).toBe(mask);
    });

    it.each(pairs)('is that of a renderer of its own: from %s to %s', (from, to) => {
        const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="40mm" viewBox="0 0 100 40"><linearGradient id="g"><stop stop-color="rgb(${from.join(',')})"/><stop offset="1" stop-color="rgb(${to.join(',')})"/></linearGradient><rect width="100" height="40" fill="url(#g)"/></svg>`;
        const { theirs, ours } = compare(svg);
        expect(Math.abs(ours / theirs - 1)).toBeLessThan(0.005);
    });
});
