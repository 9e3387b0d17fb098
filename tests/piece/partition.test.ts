import { expect, test } from 'vitest';
import { intersect, subtract } from '../../shared/geometry/boolean';
import { area } from '../../shared/geometry/measure';
import { boxed, halve, remainder } from '../../shared/piece/partition';
import { Memo } from '../../shared/plan/memo';

/**
 * Two shapes of whose parts the engine loses a triangle where three edges meet in one place: one of 6 in 20,000 random pairs of unions on
 * small grids; of the six, five come out right with x and y exchanged.
 */
const shape = { rings: [Float64Array.of(1.7857, 3.5714, 5, 1, 4, 5, 2.5, 5, 3, 6, 0, 6, 0, 0)] };
const other = {
    rings: [
        Float64Array.of(3, 6, 1.5, 4.5, 3, 4, 3.5, 3, 5, 3),
        Float64Array.of(1.5, 4.5, 0, 5, 1, 4),
        Float64Array.of(1, 4, 0, 3, 2.5, 3),
        Float64Array.of(3.5, 3, 2.5, 3, 4, 2, 3, 2, 5, 0),
    ],
};

test('what lies inside and outside makes up the whole, also where the engine is wrong at the first try', () => {
    const apart = area(intersect(shape, other)) + area(subtract(shape, other));
    expect(Math.abs(apart - area(shape)), 'the engine is wrong here; if it no longer is, take another pair').toBeGreaterThan(
        0.01,
    );
    const { inside, outside } = halve(shape, other, new Memo());
    expect(area(inside) + area(outside)).toBeCloseTo(area(shape), 3);
    // Each is what it says: nothing of the one lies in the other.
    expect(area(intersect(inside, outside))).toBeLessThan(1e-3);
});

test('what is in none of some regions makes up the whole with what they take, also where the engine is wrong at the first try', () => {
    const expected = area(shape) - area(halve(shape, other, new Memo()).inside);
    expect(Math.abs(area(subtract(shape, other)) - expected), 'the engine is wrong here').toBeGreaterThan(0.01);
    expect(area(remainder(shape, [boxed(other)!], expected, new Memo()))).toBeCloseTo(expected, 3);
});
