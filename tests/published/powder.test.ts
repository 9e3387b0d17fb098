/** Powder by mass and by room: arithmetic of two densities. Bronze 8.8, brass 8.5, mixed epoxy 1.108 g/cm3 (the last seen, not primary). */
import { describe, expect, it } from 'vitest';
import { fillMix } from '../../shared/bench/fill-volume';
import { powderShare } from '../../shared/bench/powder';
import type { Quantity } from '../../shared/quantity/quantity';
import { nowhere } from '../../shared/quantity/where';
import type { Resin } from '../../shared/recipe/stock';

const of = (value: number): Quantity => ({ value, tolerance: 0, dimension: 'ratio', unit: '', where: nowhere });
const resin = (more: Partial<Resin>): Resin => ({
    name: 'resin',
    where: nowhere,
    colour: '#888888',
    kinds: [],
    over: [],
    density: of(1.108e-3),
    ...more,
});

describe('powder', () => {
    it('75 g of bronze to 100 g of epoxy are 43 % by mass and 8.6 % of the room', () => {
        const { mass, room } = powderShare(resin({ powder: of(75 / 175), solidDensity: of(8.8e-3) }));
        expect(mass).toBeCloseTo(0.4286, 4);
        expect(room).toBeCloseTo(75 / 8.8 / (75 / 8.8 + 100 / 1.108), 9);
        expect(room).toBeCloseTo(0.0863, 4);
    });
    it('brass packed dry to 55 % of the room is 90 % by mass', () => {
        const packed = resin({ powder: of(0.55), powderBy: 'volume', solidDensity: of(8.5e-3), density: of(1.05e-3) });
        expect(powderShare(packed).mass).toBeCloseTo(0.9082, 4);
        // 1 cm3: 0.55 cm3 of brass and 0.45 cm3 of glue.
        const mix = fillMix(1000, 1, 0, packed);
        expect(mix.powder).toBeCloseTo(4.675, 9);
        expect(mix.mass).toBeCloseTo(0.4725, 9);
    });
    it('without a density its room is spare, and by volume its grams are not known', () => {
        expect(fillMix(1000, 1, 0, resin({ powder: of(0.5) })).mass).toBeCloseTo(1.108, 9);
        expect(powderShare(resin({ powder: of(0.5), powderBy: 'volume' }))).toEqual({ room: 0.5 });
        expect(fillMix(1000, 1, 0, resin({ powder: of(0.5), powderBy: 'volume' })).powder).toBeUndefined();
    });
});
