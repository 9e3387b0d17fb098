import { describe, expect, it } from 'vitest';
import { couponSheet } from '../../shared/burn/coupon-sheet';
import { strokes, textWidth } from '../../shared/burn/stroked-text';
import { quantity, shed, woodOf } from './stock';

describe('the layout of a coupon', () => {
    const sheet = couponSheet(shed, woodOf(600e-6))!;

    it('has a square for each power at each speed, and a row of more passes', () => {
        expect(sheet.squares).toHaveLength(20);
        expect(new Set(sheet.squares.map((square) => square.powerRatio)).size).toBe(4);
        expect(sheet.squares.filter((square) => square.passes === 3)).toHaveLength(4);
        expect(sheet.squares.every((square) => square.speed <= 600 && square.power <= 45)).toBe(true);
    });

    it('reaches from just digging to as deep as was wanted', () => {
        const depths = sheet.squares.map((square) => square.expected!.value);
        expect(Math.min(...depths)).toBeGreaterThan(0);
        expect(Math.min(...depths)).toBeLessThan(0.06);
        expect(Math.max(...depths)).toBeGreaterThan(0.7);
        expect(Math.max(...depths)).toBeLessThan(0.9);
    });

    it('keeps squares and labels apart and on the sheet', () => {
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
