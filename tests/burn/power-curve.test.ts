import { describe, expect, it } from 'vitest';
import { couponSheet } from '../../shared/burn/coupon-sheet';
import { guessLaw } from '../../shared/burn/guess';
import { leastPowerOf, settingFor, usableSetpoints, wattsAt, wattsOf } from '../../shared/burn/power-curve';
import { rowsOf } from '../../shared/burn/rows';
import { solveDepth } from '../../shared/burn/solve';
import { nowhere } from '../../shared/quantity/where';
import type { Laser } from '../../shared/recipe/stock';
import { quantity, shed, woodOf } from './stock';

/** A tube that gives little at first: 20 % is 3 W, 50 % is 18 W, 100 % is 45 W. */
const curved = (...points: [setting: number, watts: number][]): Laser => ({
    ...shed,
    setpoints: points.map(([setting, watts]) => ({
        setting: quantity(setting, 'ratio'),
        gives: quantity(watts, 'power'),
        where: nowhere,
    })),
});
const tube = curved([0.5, 18], [0.2, 3]);

describe('a power curve', () => {
    it('goes straight between what was measured, in any order, and both ways', () => {
        expect(wattsAt(tube, 0.2)).toBeCloseTo(3, 12);
        expect(wattsAt(tube, 0.35)).toBeCloseTo(10.5, 12);
        expect(wattsAt(tube, 0.1)).toBeCloseTo(1.5, 12);
        expect(wattsAt(tube, 1)).toBeCloseTo(45, 12);
        for (const part of [0.05, 0.2, 0.33, 0.5, 0.77, 1]) expect(settingFor(tube, wattsAt(tube, part)!)).toBeCloseTo(part, 12);
    });
    it('is a straight line where nothing was measured, and goes on beyond full power', () => {
        expect(wattsAt(shed, 0.4)).toBeCloseTo(18, 12);
        expect(settingFor(shed, 90)).toBeCloseTo(2, 12);
        expect(wattsAt({ ...shed, power: undefined } as unknown as Laser, 0.4)).toBeUndefined();
    });
    it('leaves out what does not rise or cannot be', () => {
        const odd = curved([0.3, 10], [0.4, 9], [0.5, 60], [0, 1], [1, 44], [Number.NaN, 5], [0.6, Number.NaN], [0.7, 30]);
        expect(usableSetpoints(odd).map(({ gives }) => gives.value)).toEqual([10, 30]);
        expect(wattsAt(odd, 0.5)).toBeCloseTo(20, 12);
    });
    it('turns written shares into watts: of steps, of coupon rows, of the least power', () => {
        expect(wattsOf(quantity(0.5, 'ratio'), tube)).toBeCloseTo(18, 12);
        expect(wattsOf(quantity(7, 'power'), tube)).toBe(7);
        expect(leastPowerOf({ ...tube, leastPower: quantity(0.2, 'ratio') })).toBeCloseTo(3, 12);
        const burn = { power: quantity(0.5, 'ratio'), speed: quantity(100, 'speed'), passes: 1, depth: quantity(0.2, 'length') };
        const coupon = { sheet: 's', laser: 'l', burns: [{ ...burn, where: nowhere }], where: nowhere };
        expect(rowsOf(coupon, tube).rows[0]!.power).toBeCloseTo(18, 12);
    });
    it('is what solved settings are told in: whole per cent that give the power', () => {
        const law = guessLaw(woodOf(600e-6), tube);
        const solved = solveDepth(law, tube, { depth: 0.3 })!;
        expect(solved.reached).toBe(true);
        expect(solved.powerRatio! * 100).toBeCloseTo(Math.round(solved.powerRatio! * 100), 9);
        expect(wattsAt(tube, solved.powerRatio!)).toBeCloseTo(solved.power, 9);
        expect(solved.powerRatio).toBeGreaterThan(solved.power / 45 + 0.02);
    });
    it('is what the squares of a coupon are burnt by', () => {
        const sheet = couponSheet(tube, woodOf(600e-6), { powers: [0.2, 0.5], speeds: [100] })!;
        // Rungs of one power stand together or apart, as their dose has it: each power counts once.
        const powers = new Map(sheet.squares.map(({ powerRatio, power }) => [powerRatio, power]));
        expect([...powers]).toEqual([
            [0.2, expect.closeTo(3, 9)],
            [0.5, expect.closeTo(18, 9)],
        ]);
    });
});
