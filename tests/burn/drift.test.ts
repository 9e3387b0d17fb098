import { describe, expect, it } from 'vitest';
import { driftOf, MIN_DAYS } from '../../shared/burn/drift';
import type { PowerDay } from '../../shared/burn/measured-power';
import { isoMoment } from '../../shared/quantity/calendar';
import { bell } from './stock';

const first = 20_500;
/** A day of runs a week on which so much of the power was there. */
const weekly = (powers: readonly number[], rounding = 0): PowerDay[] =>
    powers.map((power, index) => {
        const day = first + 7 * index;
        return { date: isoMoment(day * 86_400).slice(0, 10), day, logFactor: Math.log(power), error: 0.03, rounding, rows: 1 };
    });
const scatter = [0.01, -0.02, 0.015, -0.01, 0.02, -0.015, 0.005, -0.005, 0.01, -0.01, 0.02, -0.02, 0.01, 0, -0.01, 0.015];
const about = (power: (week: number) => number, rounding = 0): PowerDay[] =>
    weekly(
        scatter.map((each, week) => power(week) * (1 + each)),
        rounding,
    );

describe('drift of the power', () => {
    it('is not told of what does not change, however far it is from the coupon', () => {
        for (const offset of [0.8, 0.9, 1, 1.1, 1.25]) expect(driftOf(about(() => offset)).told, String(offset)).toBeUndefined();
    });
    it('is not told by too few days, of which one has no level either', () => {
        expect(driftOf([])).toEqual({ days: [] });
        expect(driftOf(weekly([0.9]))).not.toHaveProperty('level');
        const two = driftOf(weekly([0.9, 1.1]));
        // Geometric mean; t(0.975; 1) = 12.706 (any table) standard errors of half the difference.
        expect(two.level!.value).toBeCloseTo(Math.sqrt(0.99), 9);
        expect(Math.log(two.level!.high / two.level!.value)).toBeCloseTo((12.706 * Math.log(1.1 / 0.9)) / 2, 3);
        expect(two.told).toBeUndefined();
        expect(MIN_DAYS).toBe(3);
    });
    it('of a tube that fades is a change a month, with its range and the day since when', () => {
        const { told } = driftOf(about((week) => Math.exp(-0.01 * week)));
        expect(told!.perMonth!.value).toBeCloseTo(Math.exp((-0.01 * 30) / 7), 2);
        expect(told!.perMonth!.low).toBeLessThan(told!.perMonth!.value);
        expect(told!.perMonth!.high).toBeLessThan(1);
        expect(told!.since < '2026-04-01').toBe(true);
        expect(told!.days).toBeGreaterThan(8);
    });
    it('of a mirror that slipped is a step on its day, and no slope', () => {
        const { told, days } = driftOf(about((week) => (week < 10 ? 1 : 0.82)));
        expect(told!.since).toBe(days[10]!.date);
        expect(told).toMatchObject({ days: 6 });
        expect(told!.step!.value).toBeCloseTo(0.82, 1);
        expect(told!.step!.high).toBeLessThan(0.9);
        expect(told).not.toHaveProperty('perMonth');
    });
    it('is not told by the steps of a coarse gauge', () => {
        const steps = [1, 1, 1, 1, 1, 1, 0.94, 1, 0.94, 0.94];
        const fine = driftOf(weekly(steps, 0));
        const coarse = driftOf(weekly(steps, 0.06 / Math.sqrt(12)));
        expect(fine.told).toBeDefined();
        expect(coarse.told).toBeUndefined();
    });
    it('takes five hundred days, and days that are the same one', () => {
        const roll = bell(7);
        const long = weekly(Array.from({ length: 500 }, () => Math.exp(0.03 * roll())));
        expect(driftOf(long).days).toHaveLength(500);
        const day = weekly([1])[0]!;
        expect(driftOf([day, day, day, day]).told).toBeUndefined();
    });
});
