import { expect, test } from 'vitest';
import { intersect } from '../../shared/geometry/boolean';
import { area } from '../../shared/geometry/measure';
import { addingUp, boxed, halve, remainder } from '../../shared/piece/partition';
import { Memo } from '../../shared/plan/memo';
import { other, shape } from '../kit/three-edges';

test('what lies inside and outside makes up the whole, and nothing of the one lies in the other', () => {
    const { inside, outside } = halve(shape, other, new Memo());
    expect(area(inside) + area(outside)).toBeCloseTo(area(shape), 3);
    expect(area(intersect(inside, outside))).toBeLessThan(1e-3);
    expect(area(remainder(shape, [boxed(other)!], area(outside), new Memo()))).toBeCloseTo(area(outside), 3);
});

test('an answer that does not add up is made again with x and y exchanged, and the better one is taken', () => {
    const amiss = (answer: number): number => Math.abs(answer - 10);
    const never = () => {
        throw new Error('asked');
    };
    expect(addingUp(() => 9.9, never, amiss, 0.2)).toBe(9.9);
    expect(
        addingUp(
            () => 9,
            () => 10.5,
            amiss,
            0.2,
        ),
    ).toBe(10.5);
    expect(
        addingUp(
            () => 9,
            () => 12,
            amiss,
            0.2,
        ),
    ).toBe(9);
});
