import { describe, expect, it } from 'vitest';
import { coverage, gridAround } from '../../shared/burn/coverage';
import { normalCumulative } from '../../shared/burn/distributions';
import type { LawNumbers } from '../../shared/burn/dose';
import { depthField, doseField, volumeOf } from '../../shared/burn/dose-field';
import { wallOf } from '../../shared/burn/wall';
import { area } from '../../shared/geometry/measure';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { dish } from '../toolpath/shapes';

const law: LawNumbers = { threshold: 0.15, energy: 3.4, fade: 1 };
const sigma = 0.15 / 4;

function sum(values: Float32Array): number {
    return values.reduce((total, value) => total + value, 0);
}

describe('coverage of cells', () => {
    it.each([0.031, 0.1, 0.7, 3])('adds up to the area at cells of %d mm', (cell) => {
        const region = dish(10, 12, 9);
        const grid = gridAround(region, 0.5, cell, 1e6)!;
        expect(sum(coverage(region, grid)) * grid.cell ** 2).toBeCloseTo(area(region), 3);
    });

    it('is the share of each cell', () => {
        const grid = { x: 0, y: 0, cell: 1, columns: 4, rows: 2 };
        expect([...coverage(rectangle(0.25, 0, 2.5, 1.5), grid)]).toEqual([0.75, 1, 0.75, 0, 0.375, 0.5, 0.375, 0]);
        // A slanted edge from (0, 0) to (4, 2) with the lower left inside: each cell by its own triangle.
        const triangle = { rings: [Float64Array.of(0, 0, 4, 2, 0, 2)] };
        expect([...coverage(triangle, grid)]).toEqual([0.75, 0.25, 0, 0, 1, 1, 0.75, 0.25]);
    });

    it('reaches beyond a grid smaller than the region', () => {
        const grid = { x: 2, y: 1, cell: 1, columns: 2, rows: 2 };
        expect([...coverage(rectangle(0, 0, 10, 10), grid)]).toEqual([1, 1, 1, 1]);
        expect([...coverage(rectangle(0, 0, 2.5, 10), grid)]).toEqual([0.5, 0, 0.5, 0]);
    });
});

describe('the dose field', () => {
    it('falls across a straight edge as the normal distribution does', () => {
        const field = doseField(rectangle(0, 0, 4, 4), sigma, { cell: 0.01 })!;
        const { grid, part } = field;
        const row = Math.floor((2 - grid.y) / grid.cell);
        for (let column = 0; column < 60; column++) {
            const x = grid.x + (column + 0.5) * grid.cell;
            expect(part[row * grid.columns + column]).toBeCloseTo(normalCumulative(x / sigma), 3);
        }
    });

    it('keeps all of the dose', () => {
        const region = dish(10, 12, 9);
        const field = doseField(region, 0.08)!;
        expect(Math.abs((sum(field.part) * field.grid.cell ** 2) / area(region) - 1)).toBeLessThan(1e-4);
    });

    it('takes off the area times the depth, but for the walls', () => {
        const field = doseField(rectangle(0, 0, 20, 10), sigma)!;
        const volume = volumeOf(field, depthField(field, law, 1, 2));
        expect(volume / (200 * ((1 - 0.15) / 3.4) * 2)).toBeCloseTo(1, 2);
    });

    it('is bounded in memory, and says so', () => {
        const field = doseField(rectangle(0, 0, 600, 400), sigma, { most: 100_000 })!;
        expect(field.part.length).toBeLessThanOrEqual(100_000);
        expect(field.coarse).toBe(true);
        expect(Math.abs((sum(field.part) * field.grid.cell ** 2) / 240_000 - 1)).toBeLessThan(1e-4);
        expect(doseField(rectangle(0, 0, 6, 4), sigma)!.coarse).toBe(false);
    });

    it('has nothing to say of nothing', () => {
        expect(doseField({ rings: [] }, sigma)).toBeUndefined();
        expect(doseField(rectangle(0, 0, 4, 4), 0)).toBeUndefined();
        expect(doseField(rectangle(0, 0, 4, 4), Number.NaN)).toBeUndefined();
        expect(doseField({ rings: [Float64Array.of(0, 0, 1e308, 0, Number.NaN, 1)] }, sigma)).toBeUndefined();
    });
});

/** Depth along a line through the middle of a field, at fine cells. */
function section(region: ReturnType<typeof rectangle>, dose: number): { x: number; depth: number }[] {
    const field = doseField(region, sigma, { cell: 0.004, most: 4e6 })!;
    const depths = depthField(field, law, dose, 1);
    const row = Math.floor(field.grid.rows / 2);
    return Array.from({ length: field.grid.columns }, (_, column) => ({
        x: field.grid.x + (column + 0.5) * field.grid.cell,
        depth: depths[row * field.grid.columns + column]!,
    }));
}

describe('a wall', () => {
    const dose = 1.4;
    const wall = wallOf(law, dose, sigma, 1)!;

    it('has the growth and the lean of the field', () => {
        const points = section(rectangle(0, 0, 2, 2), dose).filter(({ x }) => x < 1);
        const at = (part: number): number => points.find(({ depth }) => depth > part * wall.depth)!.x;
        expect(at(0)).toBeCloseTo(-wall.growth, 2);
        expect(Math.atan2(at(0.9) - at(0.1), 0.8 * wall.depth)).toBeCloseTo(wall.taper, 1);
        expect(wall.growth).toBeGreaterThan(0);
    });

    it('closes a slot just narrower than it says', () => {
        const floor = (width: number): number => Math.max(...section(rectangle(0, 0, width, 2), dose).map(({ depth }) => depth));
        expect(floor(wall.slot)).toBeCloseTo(wall.depth / 2, 2);
        expect(floor(wall.slot * 0.8)).toBeLessThan(0.45 * wall.depth);
    });

    it('leaves a rib just as wide as it says', () => {
        const two = { rings: [...rectangle(0, 0, 1, 2).rings, ...rectangle(1 + wall.rib, 0, 1, 2).rings] };
        const middle = section(two, dose).filter(({ x }) => x > 0.9 && x < 1.1 + wall.rib);
        expect(Math.min(...middle.map(({ depth }) => depth))).toBeCloseTo(0.1 * wall.depth, 2);
    });

    it('leans less, the deeper it is, and nothing is no wall', () => {
        expect(wallOf(law, dose, sigma, 4)!.taper).toBeLessThan(wall.taper / 2);
        expect(wallOf(law, 0.1, sigma, 1)).toBeUndefined();
        expect(wallOf({ ...law, threshold: 0 }, dose, sigma, 1)!.growth).toBeGreaterThan(0);
        expect(wallOf(law, Number.NaN, sigma, 1)).toBeUndefined();
        expect(wallOf(law, 1e308, sigma, 1)?.growth).not.toBe(Number.NaN);
    });
});

describe('a round hole', () => {
    it('grows evenly all round', () => {
        const field = doseField(circle(5, 5, 4), sigma, { cell: 0.01 })!;
        const depths = depthField(field, law, 1.4, 1);
        const cells = depths.reduce((count, depth) => count + (depth > 0 ? 1 : 0), 0);
        const radius = Math.sqrt((cells * 0.01 ** 2) / Math.PI);
        expect(radius).toBeCloseTo(2 + wallOf(law, 1.4, sigma, 1)!.growth, 2);
    });
});
