import fc from 'fast-check';
import { test } from 'vitest';
import { drawings } from '../classics/stock';
import { expectFixesToHold } from '../kit/fixes-hold';
import { memoryWorkshop } from '../kit/memory-workshop';
import { slippedRecipes } from '../kit/slipped-recipes';
import { patience, runs } from './texts';

/** Every fix of a recipe is taken and all of it worked out again: a hundredth as many as of bare texts, and none among the unit tests, which have their own. */
const tries = Math.floor(runs / 100);

test.runIf(tries > 0)('no fix of a recipe with slips brings a finding about what it wrote', { timeout: patience }, async () => {
    const kit = await memoryWorkshop(drawings);
    await fc.assert(
        fc.asyncProperty(slippedRecipes, async (text) => void (await expectFixesToHold(kit, text))),
        { numRuns: tries },
    );
});
