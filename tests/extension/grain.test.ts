import { describe, expect, test } from 'vitest';
import { grainAlong, randomFrom } from '../../extension/bench/webview/picture/grain';

const flat = { sawn: 'flat', pores: 'diffuse', thickness: 12 } as const;

describe('drawn grain', () => {
    test('the same board always looks the same, another one different', () => {
        expect(grainAlong('tray', 300, 200, flat)).toEqual(grainAlong('tray', 300, 200, flat));
        expect(grainAlong('tray', 300, 200, flat).fine).not.toBe(grainAlong('bird', 300, 200, flat).fine);
    });

    test('is as much work for a small veneer as for a long board', () => {
        const lines = (path: string) => path.split('M').length;
        const small = lines(grainAlong('a', 10, 6, flat).fine);
        const large = lines(grainAlong('a', 3000, 2000, flat).fine);
        expect(small).toBeLessThan(200);
        expect(large).toBeLessThan(200);
    });

    test('has rings of one width, whatever the size of the board', () => {
        const quarter = { ...flat, sawn: 'quarter' } as const;
        const first = (path: string) =>
            [...path.matchAll(/M([\d.]+) (-?[\d.]+)/g)].map(([, , y]) => Number(y)).sort((a, b) => a - b);
        for (const breadth of [30, 80]) {
            const { fine, strong } = grainAlong('a', 120, breadth, quarter);
            const ys = first(fine + strong);
            // Sawn along the radius, the rings stand side by side.
            expect((ys.at(-1)! - ys[0]!) / (ys.length - 1)).toBeCloseTo(2.2, 0);
        }
    });

    test('random numbers lie between 0 and 1 and do not repeat at once', () => {
        const random = randomFrom('tray');
        const numbers = Array.from({ length: 200 }, random);
        expect(numbers.every((number) => number >= 0 && number < 1)).toBe(true);
        expect(new Set(numbers).size).toBeGreaterThan(190);
    });
});
