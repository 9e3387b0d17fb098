import { describe, expect, it } from 'vitest';
import { bracket } from '../../shared/quantity/bracket';

describe('where something ends to hold', () => {
    it('lies between the last that holds and the first that does not, a part of the way apart', () => {
        const { last, first } = bracket(1, 9, (value) => value * value < 7);
        expect(last).toBeLessThanOrEqual(Math.sqrt(7));
        expect(first).toBeGreaterThanOrEqual(Math.sqrt(7));
        expect(first - last).toBeLessThan(8 * 1e-12 + 1e-14);
    });
    it('asks neither end, and comes no nearer than it is told to', () => {
        const asked: number[] = [];
        const { last, first } = bracket(0, 1, (value) => asked.push(value) > 0 && value < 0.3, 0.1);
        expect(asked).toEqual([0.5, 0.25, 0.375, 0.3125]);
        expect([last, first]).toEqual([0.25, 0.3125]);
    });
});
