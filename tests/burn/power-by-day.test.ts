import { describe, expect, it } from 'vitest';
import { doseFor } from '../../shared/burn/dose';
import { fitCoupon } from '../../shared/burn/fit';
import { type DepthLaw, predict } from '../../shared/burn/law';
import { lawOfDay, startOf } from '../../shared/burn/law-of-day';
import { pieceSpread } from '../../shared/burn/piece-spread';
import { type DatedRow, powerByDay, withPower } from '../../shared/burn/power-by-day';
import { nowhere } from '../../shared/quantity/where';
import type { Coupon, Laser, Sheet } from '../../shared/recipe/stock';
import { burn, couponOf, shed, woodOf } from './stock';
import { type WorldName, worlds, yearsOf } from './year-of-laser';

const on = (value: string) => ({ value, where: nowhere });
const squares = [
    burn(0.4, 400, 1, 0.09),
    burn(0.6, 300, 1, 0.21),
    burn(0.8, 250, 1, 0.38),
    burn(0.8, 300, 2, 0.6),
    burn(0.7, 300, 3, 0.75),
];
const coupon: Coupon = { ...couponOf(squares), burnt: on('2026-01-10') };
const board: Sheet = { kind: 'board', name: 'board', where: nowhere, wood: woodOf(600e-6) };
const law = fitCoupon(coupon, shed, board.wood);
/** The coupon's own law for the next piece, of which no run has told anything. */
const own: DepthLaw = { ...law, pieces: pieceSpread(undefined) };
const set = { power: 36, speed: 400, pitch: 0.1, passes: 3 };

/** A pocket that came out as with so much of the power. */
function pocket(date: string, power: number, from: DepthLaw = law): DatedRow {
    const depth = predict(from, { ...set, power: set.power * power })!.value;
    return { date, row: { ...set, depth, tolerance: 0 } };
}
const from = (dates: readonly string[], power: number): DatedRow[] => dates.map((date) => pocket(date, power));
const depthOf = (found: DepthLaw) => predict(found, set)!;
const weeks = ['2026-02-01', '2026-02-08', '2026-02-15', '2026-02-22', '2026-03-01', '2026-03-08', '2026-03-15', '2026-03-22'];

describe('the power that runs say is left', () => {
    it('is that of the newest days, whatever was before', () => {
        const faded = powerByDay(law, [...from(weeks.slice(0, 4), 1), ...from(weeks.slice(4), 0.85)], '2026-01-10')!;
        expect(Math.exp(faded.logFactor)).toBeGreaterThan(0.85);
        expect(Math.exp(faded.logFactor)).toBeLessThan(0.89);
        expect(faded.days.map(({ date }) => date)).toEqual(weeks);
        // One half-life apart, of days that are measured alike: 1 against ½.
        const alike = powerByDay(law, [pocket('2026-02-01', 1), pocket('2026-02-16', 0.85)], '2020-01-01')!;
        expect(alike.logFactor / Math.log(0.85)).toBeCloseTo(2 / 3, 1);
    });

    it('knows of a run of years ago hardly more than that a laser strays', () => {
        const run = from(['2026-02-01'], 0.9);
        const errorOn = (today: string) => powerByDay(law, run, undefined, today)!.error;
        expect(errorOn('2026-02-16')).toBeGreaterThan(errorOn('2026-02-01'));
        // Three tenths, which is what is known of one of which no run has said anything.
        expect(errorOn('2036-02-01')).toBeCloseTo(0.3, 3);
    });

    it('takes squares of one day for one point, with what changes from day to day in its error', () => {
        const one = powerByDay(law, [pocket('2026-02-01', 0.9)], '2026-01-10')!;
        const many = powerByDay(law, from(Array<string>(50).fill('2026-02-01'), 0.9), '2026-01-10')!;
        expect(many.days).toHaveLength(1);
        expect(many.days[0]).toMatchObject({ rows: 50 });
        expect(many.days[0]!.error).toBeGreaterThanOrEqual(0.02);
        expect(many.error).toBeLessThan(one.error);
        expect(many.error).toBeGreaterThan(0.012);
    });

    it('leaves out what was misread or is no figure, and is nothing without a day that counts', () => {
        const slip = { ...pocket('2026-02-01', 1), row: { ...set, depth: 5.4, tolerance: 0 } };
        const odd = [Number.NaN, 0, -1, 1e308].flatMap((depth): DatedRow[] => [
            { date: '2026-02-01', row: { ...set, depth, tolerance: 0 } },
            { date: '2026-02-01', row: { ...set, power: depth, depth: 0.5, tolerance: 0 } },
            { date: '2026-02-30', row: { ...set, depth: 0.5, tolerance: 0 } },
        ]);
        expect(powerByDay(law, [slip, ...odd])).toBeUndefined();
        expect(powerByDay(law, [])).toBeUndefined();
        expect(lawOfDay(coupon, shed, board, [slip, ...odd])).toEqual(own);
    });

    it('scales the law, so that depth is what more or less power would give, and widens what is told', () => {
        const power = powerByDay(law, from(weeks, 0.8), '2026-01-10')!;
        const now = withPower(law, power);
        const left = Math.exp(power.logFactor);
        expect(depthOf(now).value).toBeCloseTo(predict(law, { ...set, power: set.power * left })!.value, 12);
        expect(doseFor(now, 0.5, 3)).toBeCloseTo(doseFor(law, 0.5, 3) / left, 12);
        const width = ({ low, high }: { low: number; high: number }) => high - low;
        const sure = withPower(law, { ...power, error: 0 });
        expect(width(depthOf(now))).toBeGreaterThan(width(depthOf(sure)));
        // Of one error of the factor, depth and its part below the threshold move together.
        expect(now.covariance[4]! - sure.covariance[4]!).toBeCloseTo((power.error * now.energy) ** 2, 12);
    });
});

describe('the law of the day', () => {
    it('is the coupon’s own without runs, and lets no run from before it count', () => {
        expect(lawOfDay(coupon, shed, board, [])).toEqual(own);
        expect(lawOfDay(coupon, shed, board, from(['2025-12-01', '2026-01-09'], 0.6))).toEqual(own);
        expect(depthOf(lawOfDay(coupon, shed, board, from(weeks, 0.8))).value).toBeLessThan(depthOf(law).value * 0.85);
    });

    it.each(['serviced', 'bought'] as const)('begins again where the laser or board was %s', (event) => {
        const laser: Laser = { ...shed, ...(event === 'serviced' && { serviced: on('2026-03-10') }) };
        const sheet: Sheet = { ...board, ...(event === 'bought' && { bought: on('2026-03-10') }) };
        const before = from(weeks.slice(0, 6), 0.7);
        expect(startOf(coupon, laser, sheet)).toEqual({ date: '2026-03-10', event });
        expect(lawOfDay(coupon, laser, sheet, before)).toEqual(own);
        const after = lawOfDay(coupon, laser, sheet, [...before, ...from(weeks.slice(6), 1.1)]);
        expect(after.power!.days).toHaveLength(2);
        expect(Math.exp(after.power!.logFactor)).toBeCloseTo(1.1, 1);
    });

    it('holds the shape of the coupon: a heap of pockets of one depth does not bend it', () => {
        const many = Array.from({ length: 400 }, () => pocket('2026-03-01', 0.9));
        const found = lawOfDay(coupon, shed, board, many);
        expect(found.threshold / found.energy).toBeCloseTo(law.threshold / law.energy, 12);
        expect(found.fade).toBe(law.fade);
    });

    it('without squares that can stand alone is fitted to the newest pockets, and follows them', () => {
        const old = Array.from({ length: 600 }, () => pocket('2025-06-01', 1));
        const news = from(weeks, 0.8);
        const found = lawOfDay(undefined, shed, board, [...old, ...news].toReversed());
        expect(found.guess).toBe(false);
        expect(depthOf(found).value / news[0]!.row.depth).toBeCloseTo(1, 1);
        expect(found.power!.days.at(-1)!.date).toBe('2026-03-22');
    });

    it('makes nothing worse where nothing changed', () => {
        const width = (found: DepthLaw) => depthOf(found).high - depthOf(found).low;
        const same = lawOfDay(coupon, shed, board, from(weeks, 1));
        expect(depthOf(same).value).toBeCloseTo(depthOf(law).value, 3);
        expect(width(same)).toBeLessThan(1.2 * width(own));
    });
});

// Thirty years a world, and other seeds, are at the command line: npm run simulate.
describe('a simulated year', () => {
    const seeds = [11, 12, 13, 14];
    it.each<[WorldName, number]>([
        ['steady', 0.065],
        ['slow-then-fast', 0.065],
        ['step', 0.065],
        ['walk', 0.065],
    ])('of a laser that changes (%s) misses by less than 6.5 %%', (name, most) => {
        expect(yearsOf(worlds[name], seeds).year).toBeLessThan(most);
    });
    it('of one that does not costs nothing: 3.3 % in the worst quarter', () => {
        expect(yearsOf(worlds.unchanged, seeds).worstQuarter).toBeLessThan(0.033);
    });
    it('is missed by more where all squares count alike, or none', () => {
        const alike = yearsOf(worlds.steady, seeds.slice(0, 1), 'all alike').year;
        const none = yearsOf(worlds.steady, seeds.slice(0, 1), 'coupon only').year;
        expect(Math.min(alike, none)).toBeGreaterThan(0.065);
    });
});
