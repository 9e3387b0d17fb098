import { describe, expect, it } from 'vitest';
import { BlurredStrips } from '../../shared/bench/blurred-strips';
import { edgeBlocks } from '../../shared/bench/edge-blocks';
import { doseField } from '../../shared/burn/dose-field';
import { subtract, union } from '../../shared/geometry/boolean';
import type { Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';

const sigma = 0.04;
const cell = 0.03;
const box = { minX: -1, minY: -1.3, maxX: 3.1, maxY: 2.2 };

const shapes: Record<string, Region> = {
    'a ring': subtract(circle(1, 0.5, 1.6), circle(1, 0.5, 0.9)),
    'a hair and a hole': union([rectangle(0.2, -0.9, 0.07, 2.5), subtract(rectangle(1, 0, 1.4, 1.1), circle(1.7, 0.6, 0.3))]),
    'more than the plane': rectangle(-5, -5, 5.5, 10),
    'a slanting bar from end to end': { rings: [Float64Array.of(-4, -3, -3.6, -3, 6, 4, 5.5, 4)] },
};

/** The same by the whole field, where an edge is near; elsewhere the level. */
describe('a region blurred strip by strip', () => {
    for (const [name, region] of Object.entries(shapes)) {
        it(`is what the whole field is: ${name}`, () => {
            const blocks = edgeBlocks(box, cell, 6, [region], 4 * sigma)!;
            const { grid, side, across, down, near } = blocks;
            // The whole field, on a larger grid so that nothing is missing at the ends.
            const more = 5 * side;
            const wide = {
                x: grid.x - more * cell,
                y: grid.y - more * cell,
                cell,
                columns: grid.columns + 2 * more,
                rows: grid.rows + 2 * more,
            };
            const whole = doseField(region, Math.sqrt(sigma ** 2 - cell ** 2 / 6), { grid: wide })!;
            const strips = new BlurredStrips(region, blocks, sigma);
            const row = new Float32Array(grid.columns);
            let worst = 0;
            let worked = 0;
            for (let strip = 0; strip < down; strip++) {
                strips.advance();
                for (let block = 0; block < across; block++) {
                    for (let line = 0; line < side; line++) {
                        const y = strip * side + line;
                        // Four sigmas from the plane's own ends, beyond which the strips see nothing.
                        if (y < side || y >= grid.rows - side || block < 1 || block >= across - 1) continue;
                        if (near[strip * across + block] === 1) strips.row(line, block * side, (block + 1) * side, row);
                        else row.fill(strips.level(block), block * side, (block + 1) * side);
                        worked += 1;
                        for (let x = block * side; x < (block + 1) * side; x++) {
                            worst = Math.max(worst, Math.abs(row[x]! - whole.part[(y + more) * wide.columns + x + more]!));
                        }
                    }
                }
            }
            expect(worked).toBeGreaterThan(1000);
            expect(worst).toBeLessThan(2e-4);
        });
    }
});
