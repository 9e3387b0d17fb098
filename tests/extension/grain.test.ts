import { describe, expect, test } from 'vitest';
import { grainAlong, randomFrom } from '../../extension/bench/webview/picture/grain';

describe('drawn grain', () => {
    test('the same board always looks the same, another one different', () => {
        expect(grainAlong('tray', 300, 200)).toEqual(grainAlong('tray', 300, 200));
        expect(grainAlong('tray', 300, 200).fine).not.toBe(grainAlong('bird', 300, 200).fine);
    });

    test('is as much work for a small veneer as for a long board', () => {
        const lines = (path: string) => path.split('M').length;
        const small = lines(grainAlong('a', 10, 6).fine);
        const large = lines(grainAlong('a', 3000, 2000).fine);
        expect(small).toBeLessThan(200);
        expect(large).toBeLessThan(200);
    });

    test('random numbers lie between 0 and 1 and do not repeat at once', () => {
        const random = randomFrom('tray');
        const numbers = Array.from({ length: 200 }, random);
        expect(numbers.every((number) => number >= 0 && number < 1)).toBe(true);
        expect(new Set(numbers).size).toBeGreaterThan(190);
    });
});
