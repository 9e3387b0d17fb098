import { expect, test } from 'vitest';
import { randomCase, strayOf } from '../geometry/grid-cases';
import { seeded } from '../geometry/shapes-at-random';

/** How many cases; `npm run fuzz` sets it higher. */
const runs = Number(process.env.FUZZ_RUNS ?? 60);

/** A case on a grid takes under a millisecond: twice as many as runs of other kinds, and always so many that some are hard. */
test('polygons on a grid have the areas that slabs give them', { timeout: 600_000 }, () => {
    const seed = Math.floor(Math.random() * 2 ** 31);
    const random = seeded(seed);
    for (let k = 0; k < Math.max(1000, 2 * runs); k++) {
        const one = randomCase(random);
        const stray = strayOf(one);
        expect(stray, `seed ${seed}, case ${k}: ${one.operation} ${one.rule}`).toBeLessThan(1);
    }
});
