import { describe, expect, it } from 'vitest';
import { travelLength } from '../../shared/toolpath/order';
import { outlinePaths } from '../../shared/toolpath/outline';
import { pathOfRing } from '../../shared/toolpath/path';
import { planOf } from '../kit/plan-of';
import { sampleText } from '../kit/samples';

/** How much of the way (mm) with the beam off is left, of that in the order of the drawing: a little above what was measured. */
describe('the outlines of the samples', () => {
    it.each([
        ['seed-box', 0.7],
        ['gate-sign', 0.6],
        ['heron-tray', 0.45],
    ])('of %s travel less than in the order of the drawing', async (name, most) => {
        const plan = await planOf(...sampleText(name));
        const regions = plan.steps.flatMap(({ laser }) => laser?.region ?? []);
        const sum = (lengths: readonly number[]): number => lengths.reduce((total, length) => total + length, 0);
        const drawn = sum(regions.map(({ rings }) => travelLength(rings.map((ring) => pathOfRing(ring)))));
        const ours = sum(regions.map((region) => travelLength(outlinePaths(region))));
        expect(ours / drawn).toBeLessThan(most);
    });
});
