import { describe, expect, it } from 'vitest';
import { driftsOf, type WorldName, worlds } from './year-of-laser';

// A thousand years a workshop, and other seeds, are at the command line: npm run simulate -- drift.
describe('in simulated workshops that look after each day of runs', () => {
    const seeds = Array.from({ length: 150 }, (_, at) => 5000 + at);
    it.each([{}, { offset: 0.1 }, { offset: -0.1 }, { gauge: 0.05 }, { gauge: 0.1 }])(
        'no drift is told in 95 of 100 within 20 days where there is none: %j',
        (ways) => {
            // Measured over 1000: 0.1 to 2.4 %.
            expect(driftsOf(worlds.unchanged, seeds, ways).early).toBeLessThanOrEqual(0.05);
        },
    );
    it.each<[WorldName, number]>([
        ['steady', 130],
        ['slow-then-fast', 270],
        ['step', 190],
    ])('one is told where there is one (%s), in half of the years by day %d', (name, latest) => {
        const { ever, middleDay } = driftsOf(worlds[name], seeds.slice(0, 40));
        expect(ever).toBeGreaterThan(0.95);
        expect(middleDay).toBeLessThan(latest);
    });
});
