import { describe, expect, it } from 'vitest';
import { type CouponSheet, couponSheet } from '../../shared/burn/coupon-sheet';
import { doseOf } from '../../shared/burn/dose';
import { strokes, textWidth } from '../../shared/burn/stroked-text';
import { nowhere } from '../../shared/quantity/where';
import { quantity, shed, woodOf } from './stock';

describe('the layout of a coupon', () => {
    const sheet = couponSheet(shed, woodOf(600e-6))!;

    it('is numbered from the gentlest dose to the strongest, all passes counted', () => {
        expect(sheet.squares.map(({ number }) => number)).toEqual(Array.from({ length: 16 }, (_, i) => i + 1));
        const doses = sheet.squares.map((square) => doseOf({ ...square, pitch: sheet.pitch }) * square.passes);
        expect(doses).toEqual(doses.toSorted((a, b) => a - b));
        expect(new Set(sheet.squares.map(({ powerRatio }) => powerRatio)).size).toBe(4);
        expect(sheet.squares.every((square) => square.speed <= 600 && square.power <= 45)).toBe(true);
    });

    it('has two or three passes in more than a quarter of its squares, each of which digs', () => {
        const repeated = sheet.squares.filter(({ passes }) => passes > 1);
        expect(repeated.length).toBeGreaterThanOrEqual(sheet.squares.length / 4);
        expect(new Set(repeated.map(({ passes }) => passes))).toEqual(new Set([2, 3]));
        for (const { expected, passes } of repeated) {
            expect(expected!.value / passes).toBeGreaterThan(0.15);
            expect(expected!.value).toBeLessThan(1.25);
        }
        expect(couponSheet(shed, undefined, { passes: 1 })!.squares.every(({ passes }) => passes === 1)).toBe(true);
    });

    it('reaches from just digging to as deep as was wanted', () => {
        const depths = sheet.squares.map((square) => square.expected!.value);
        expect(Math.min(...depths)).toBeGreaterThan(0);
        expect(Math.min(...depths)).toBeLessThan(0.06);
        expect(Math.max(...depths)).toBeGreaterThan(1.1);
        const single = sheet.squares.filter(({ passes }) => passes === 1).map(({ expected }) => expected!.value);
        expect(Math.max(...single)).toBeGreaterThan(0.7);
        expect(Math.max(...single)).toBeLessThan(0.9);
    });

    it('is folded to stay within the field, and only as often as it must', () => {
        const within = (width: number, height: number) =>
            couponSheet(
                { ...shed, field: { width: quantity(width, 'length'), height: quantity(height, 'length'), where: nowhere } },
                undefined,
            )!;
        const columns = ({ squares }: CouponSheet) => new Set(squares.map(({ x }) => x)).size;
        expect(columns(within(600, 400))).toBe(2);
        expect(columns(within(16, 400))).toBe(1);
        const low = within(100, 50);
        expect(columns(low)).toBe(4);
        expect(low.width).toBeLessThan(100);
        expect(low.height).toBeLessThan(50);
    });

    it('keeps squares and numbers apart and on the sheet', () => {
        const { squares, labels, width, height } = sheet;
        squares.forEach((a, i) => {
            expect(a.x >= 0 && a.y >= 0 && a.x + a.size <= width + 1e-9 && a.y + a.size <= height + 1e-9).toBe(true);
            for (const b of squares.slice(i + 1))
                expect(Math.abs(a.x - b.x) >= a.size || Math.abs(a.y - b.y) >= a.size).toBe(true);
        });
        for (const line of labels) {
            for (let i = 0; i < line.length; i += 2) {
                const [x, y] = [line[i]!, line[i + 1]!];
                expect(x >= 0 && y >= 0 && x <= width && y <= height).toBe(true);
                expect(
                    squares.some(
                        (square) => x > square.x && x < square.x + square.size && y > square.y && y < square.y + square.size,
                    ),
                ).toBe(false);
            }
        }
    });

    it('takes chosen powers and speeds, and refuses odd ones', () => {
        const chosen = couponSheet(shed, undefined, { powers: [0.2, 0.4], speeds: [100], passes: 1 })!;
        expect(chosen.squares.map(({ powerRatio, speed }) => [powerRatio, speed])).toEqual([
            [0.2, 100],
            [0.4, 100],
        ]);
        const turns = couponSheet(shed, undefined, { speeds: [400, 200], passes: 1, rungs: 6 })!.squares;
        // At 400 mm/s all the power there is does not give the fifth dose.
        expect(turns.map(({ speed }) => speed)).toEqual([400, 200, 400, 200, 200, 200]);
        const powers = turns.map(({ power, speed }) => power / speed);
        expect(powers).toEqual(powers.toSorted((a, b) => a - b));
        expect(couponSheet(shed, undefined, { rungs: 3 })).toBeUndefined();
        expect(couponSheet(shed, undefined, { passes: 1.5 })).toBeUndefined();
        expect(couponSheet(shed, undefined, { powers: [0] })).toBeUndefined();
        expect(couponSheet(shed, undefined, { speeds: [Number.NaN] })).toBeUndefined();
        expect(couponSheet(shed, undefined, { square: 1e308 })).toBeUndefined();
        expect(couponSheet({ ...shed, power: quantity(Number.NaN, 'power') }, undefined)).toBeUndefined();
        expect(couponSheet(undefined, undefined)).toBeUndefined();
    });
});

describe('stroked text', () => {
    it('stays within its box and tells all digits apart', () => {
        const drawn = [...'0123456789'].map((digit) => {
            const lines = strokes(digit, 10, 20, 6);
            for (const line of lines)
                for (let i = 0; i < line.length; i += 2)
                    expect(line[i]! >= 10 && line[i]! <= 14 && line[i + 1]! >= 20 && line[i + 1]! <= 26).toBe(true);
            return JSON.stringify(lines.map((line) => [...line]));
        });
        expect(new Set(drawn).size).toBe(10);
    });

    it('is as wide as it says', () => {
        const lines = strokes('40%', 0, 0, 3);
        expect(Math.max(...lines.flatMap((line) => [...line].filter((_, i) => i % 2 === 0)))).toBeCloseTo(textWidth('40%', 3), 9);
        expect(strokes('', 0, 0, 3)).toEqual([]);
    });
});
