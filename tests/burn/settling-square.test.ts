import { describe, expect, it } from 'vitest';
import { depthOf, doseOf, type LawNumbers } from '../../shared/burn/dose';
import { fitCoupon } from '../../shared/burn/fit';
import { guessLaw } from '../../shared/burn/guess';
import { type DepthLaw, lawCovariance, predict } from '../../shared/burn/law';
import { settlingSquare } from '../../shared/burn/settling-square';
import type { Burn } from '../../shared/recipe/stock';
import { bell, burn, couponOf, shed, woodOf } from './stock';

const truth: LawNumbers = { threshold: 0.15, energy: 3, fade: 0.94 };
const pitch = 0.1;
const wood = woodOf(600e-6);

/** Squares of one dose ladder, each read with an error of 3 % and 0.01 mm. */
function squares(roll: () => number, rows: readonly (readonly [number, number, number])[]): Burn[] {
    return rows.map(([ratio, speed, passes]) => {
        const depth = depthOf(truth, (45 * ratio) / (speed * pitch), passes);
        return burn(ratio, speed, passes, Math.max(0.01, depth * (1 + 0.03 * roll()) + 0.01 * roll()));
    });
}

const shallow = [
    [0.4, 400, 1],
    [0.5, 400, 1],
    [0.6, 400, 1],
    [0.6, 300, 1],
    [0.7, 300, 1],
    [0.5, 400, 2],
    [0.6, 400, 2],
] as const;

function halfOf(law: DepthLaw, settings: Parameters<typeof predict>[1]): number {
    const { value, high } = predict(law, settings)!;
    return high - value;
}

describe('the square that would settle a depth', () => {
    const aim = { power: 36, speed: 150, pitch, passes: 5 };

    it('says what the range comes to once it is measured: as the fit with that square does, over 60 coupons', () => {
        let [told, came] = [0, 0];
        for (let seed = 1; seed <= 60; seed++) {
            const roll = bell(seed * 11 + 2);
            const rows = squares(roll, shallow);
            const law = fitCoupon(couponOf(rows), shed, wood);
            if (law.degreesOfFreedom === undefined || law.notes.includes('bent') || law.notes.includes('outliers')) continue;
            const square = settlingSquare(law, aim, shed)!;
            const more = burn(square.powerRatio!, square.speed, square.passes, depthOf(truth, doseOf(square), square.passes));
            const after = fitCoupon(couponOf([...rows, more]), shed, wood);
            told += square.narrowed / square.half;
            came += halfOf(after, aim) / halfOf(law, aim);
            expect(square.half).toBeCloseTo(halfOf(law, aim), 1);
            expect(square.narrowed).toBeLessThan(square.half);
        }
        expect(told).toBeGreaterThan(0);
        expect(came / told).toBeGreaterThan(0.8);
        expect(came / told).toBeLessThan(1.2);
    });

    it('asks for as many passes as are in question where the fade is unknown', () => {
        const single = shallow.filter(([, , passes]) => passes === 1);
        const law = fitCoupon(couponOf(squares(() => 0, single)), shed, wood);
        const square = settlingSquare(law, aim, shed)!;
        expect(square.passes).toBe(5);
        expect(square.narrowed).toBeLessThan(0.6 * square.half);
    });

    it('is burnt in the pitch of the coupon, with the dose that is asked', () => {
        const law = fitCoupon(couponOf(squares(() => 0, shallow)), shed, wood);
        const finer = { ...aim, pitch: 0.05, speed: 300 };
        const square = settlingSquare(law, finer, shed)!;
        expect(square.pitch).toBe(pitch);
        expect(doseOf(square) / doseOf(finer)).toBeGreaterThan(0.65);
        expect(doseOf(square) / doseOf(finer)).toBeLessThan(1.45);
    });

    it('goes no faster than the laser', () => {
        const law = fitCoupon(couponOf(squares(() => 0, shallow)), shed, wood);
        for (const speed of [150, 400, 599]) {
            const square = settlingSquare(law, { ...aim, speed }, shed);
            expect(square?.speed ?? 0).toBeLessThanOrEqual(600);
        }
        expect(settlingSquare(law, { ...aim, speed: 5000 }, shed)).toBeUndefined();
    });

    it('takes most of what a guess leaves open, and no more than the next board allows', () => {
        const square = settlingSquare(guessLaw(wood, shed), aim, shed)!;
        expect(square.narrowed).toBeLessThan(0.4 * square.half);
        const depth = predict(guessLaw(wood, shed), aim)!.value;
        expect(square.narrowed / depth).toBeGreaterThan(1.9 * 0.08);
    });

    it('says nothing of settings that burn nothing', () => {
        const law = guessLaw(wood, shed);
        for (const bad of [
            { ...aim, power: 0 },
            { ...aim, speed: 0 },
            { ...aim, passes: 0 },
            { ...aim, speed: Number.NaN },
        ])
            expect(settlingSquare(law, bad, shed)).toBeUndefined();
    });
});

describe('what a law may be off by at two places', () => {
    it('goes together as its numbers do (against differences), alike in either order', () => {
        const law = fitCoupon(couponOf(squares(bell(5), shallow)), shed, wood);
        const [one, other] = [
            { dose: 0.7, passes: 1 },
            { dose: 1.6, passes: 3 },
        ];
        const step = 1e-6;
        const slope = ({ dose, passes }: typeof one): number[] =>
            (['threshold', 'energy', 'fade'] as const).map(
                (name) =>
                    (depthOf({ ...law, [name]: law[name] + step }, dose, passes) -
                        depthOf({ ...law, [name]: law[name] - step }, dose, passes)) /
                    (2 * step),
            );
        const [a, b] = [slope(one), slope(other)];
        const expected = a.reduce((sum, x, i) => sum + b.reduce((part, y, j) => part + x * y * law.covariance[3 * i + j]!, 0), 0);
        expect(lawCovariance(law, one, other) / expected).toBeCloseTo(1, 6);
        expect(lawCovariance(law, other, one)).toBeCloseTo(lawCovariance(law, one, other), 15);
    });
});
