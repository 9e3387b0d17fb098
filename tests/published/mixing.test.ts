/**
 * Mixing resin. The example of a 20 cm2 pocket is computed; 2 to 5 % off the ratio leaving resin
 * soft, and layers of about a quarter inch for table-top epoxy, are trade guidance that was seen.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fillMix } from '../../shared/bench/fill-volume';
import { batchesFor, leastMix } from '../../shared/bench/mix-batches';
import { poursFor, recoat } from '../../shared/bench/pours';
import type { Quantity } from '../../shared/quantity/quantity';
import { nowhere } from '../../shared/quantity/where';
import type { Resin } from '../../shared/recipe/stock';

const density = (gramsPerCm3: number): Quantity => ({
    value: gramsPerCm3 / 1000,
    tolerance: 0,
    dimension: 'density',
    unit: 'g/cm3',
    where: nowhere,
});
const resin = (part: Partial<Resin>): Resin => ({
    name: 'blue',
    where: nowhere,
    colour: '#0000ff',
    kinds: ['blue'],
    over: [],
    ...part,
});
const minutes = 60;

describe('a pocket of 20 cm2 and 1.5 mm, 15 % over, at 1.10 g/cm3', () => {
    const byVolume = fillMix(
        2000,
        1.5,
        0.15,
        resin({ mix: { resin: 2, hardener: 1, by: 'volume', where: nowhere }, density: density(1.1) }),
    );
    it('takes 3.45 cm3, of 3.795 g', () => {
        expect(byVolume.volume).toBeCloseTo(3450, 9);
        expect(byVolume.mass).toBeCloseTo(3.795, 9);
    });
    it('is 2.30 and 1.15 cm3 at 2 to 1 by volume', () => {
        expect(byVolume.parts!.resin).toBeCloseTo(2300, 9);
        expect(byVolume.parts!.hardener).toBeCloseTo(1150, 9);
    });
    it('is 2.53 and 1.265 g at 2 to 1 by weight', () => {
        const byWeight = fillMix(
            2000,
            1.5,
            0.15,
            resin({ mix: { resin: 2, hardener: 1, by: 'weight', where: nowhere }, density: density(1.1) }),
        );
        expect(byWeight.parts).toMatchObject({ by: 'weight' });
        expect(byWeight.parts!.resin).toBeCloseTo(2.53, 9);
        expect(byWeight.parts!.hardener).toBeCloseTo(1.265, 9);
    });
    it('cannot be weighed out without a density', () => {
        expect(
            fillMix(2000, 1.5, 0.15, resin({ mix: { resin: 2, hardener: 1, by: 'weight', where: nowhere } })).parts,
        ).toBeUndefined();
    });
    const share = (value: number): Quantity => ({ value, tolerance: 0, dimension: 'ratio', unit: '%', where: nowhere });
    it('takes pigment as a part of the whole', () => {
        const { pigment, mass } = fillMix(2000, 1.5, 0.15, resin({ density: density(1.1), pigment: share(0.04) }));
        expect(pigment! / (pigment! + mass!)).toBeCloseTo(0.04, 12);
        expect(pigment).toBeCloseTo(0.158125, 9);
    });
    it('75 g of metal powder to 100 g of mix is 43 % of the whole (computed)', () => {
        const hundred = fillMix(1000, 100, 0, resin({ density: density(1), powder: share(75 / 175) }));
        expect(hundred.mass).toBeCloseTo(100, 9);
        expect(hundred.powder).toBeCloseTo(75, 9);
    });
    it('weighs nothing out where nothing is left for the resin', () => {
        const full = fillMix(1000, 100, 0, resin({ density: density(1), powder: share(0.7), pigment: share(0.3) }));
        expect(full).not.toHaveProperty('powder');
        expect(full).not.toHaveProperty('pigment');
    });
});

describe('mixed unfilled epoxy', () => {
    it('of the built-in stock weighs 4195 g a US gallon (seen, not a primary source)', () => {
        const stock = readFileSync(new URL('../../language/stock/resins.kerf', import.meta.url), 'utf8');
        for (const name of ['slow-epoxy', 'table-top-epoxy', 'deep-pour-epoxy']) {
            const written = new RegExp(`^resin ${name} \\{[^}]*?^  density ([\\d.]+) g/cm3`, 'm').exec(stock)?.[1];
            const kind = resin({ density: density(Number(written)) });
            // A gallon is 231 cubic inches.
            expect(Math.abs(fillMix(25.4 ** 2, 231 * 25.4, 0, kind).mass! - 4195), name).toBeLessThan(2);
        }
    });
    it('a gallon covers 1604 ft2 at one mil (computed; a sheet prints 1608)', () => {
        const gallon = 3785411.784;
        const foot = 304.8;
        const mil = 0.0254;
        expect(fillMix(foot * foot, mil, 0, resin({})).volume * 1604.2).toBeCloseTo(gallon, -3);
    });
});

describe('layers by the deepest pour', () => {
    it('a quarter inch at once (trade guidance for table-top epoxy)', () => {
        expect(poursFor(6, 6)).toEqual({ count: 1, each: 6 });
        expect(poursFor(6.1, 6)).toEqual({ count: 2, each: 3.05 });
        expect(poursFor(20, 6)).toEqual({ count: 4, each: 5 });
    });
    it('nothing takes no pour, and a resin that does not say takes one', () => {
        expect(poursFor(0, 6)).toEqual({ count: 0, each: 0 });
        expect(poursFor(Number.NaN, 6)).toEqual({ count: 0, each: 0 });
        expect(poursFor(20, undefined)).toEqual({ count: 1, each: 20 });
        expect(poursFor(20, 0)).toEqual({ count: 1, each: 20 });
        expect(poursFor(1e300, 1e-300).count).toBe(1000);
    });
    it('the next layer bonds inside the window (4 to 10 h for table-top epoxy, trade guidance)', () => {
        const window = { from: 4 * 3600, to: 10 * 3600 };
        expect([2, 4, 10, 12].map((hours) => recoat(hours * 3600, window))).toEqual(['too-soft', 'bonds', 'bonds', 'sand-first']);
    });
});

describe('cups by pot life', () => {
    it('as many pieces as can be filled after mixing', () => {
        // 40 min less 8 for mixing, 4 for each: eight pieces.
        expect(batchesFor(8, 40 * minutes, undefined, 8 * minutes, 4 * minutes)).toEqual({ count: 1, pieces: 8, tooSlow: false });
        expect(batchesFor(9, 40 * minutes, undefined, 8 * minutes, 4 * minutes)).toEqual({ count: 2, pieces: 8, tooSlow: false });
        expect(batchesFor(3, 10 * minutes, undefined, 8 * minutes, 4 * minutes)).toEqual({ count: 3, pieces: 1, tooSlow: true });
        // Eight pieces would fit the time; so much in one cup heats itself up, and a cup is never less than a piece.
        expect(batchesFor(9, 40 * minutes, 3.9, 8 * minutes, 4 * minutes)).toEqual({ count: 3, pieces: 3, tooSlow: false });
        expect(batchesFor(2, 40 * minutes, 0.2, 8 * minutes, 4 * minutes)).toEqual({ count: 2, pieces: 1, tooSlow: false });
        expect(batchesFor(0, 10)).toEqual({ count: 0, pieces: 0, tooSlow: false });
    });
    it('a cup large enough to keep the ratio to three per cent', () => {
        // Half a graduation of 0.5 ml is three per cent of 8.33 ml of hardener; three times that is the mix.
        expect(leastMix([2, 1], 0.5)).toBeCloseTo(25, 9);
        expect(leastMix([1, 1], 0.1, 0.05)).toBeCloseTo(2, 9);
        expect(leastMix([], 0.1)).toBe(0);
        expect(leastMix([1, 0], 0.1, 0.05)).toBeCloseTo(1, 9);
    });
});
