import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawings } from '../classics/stock';
import { expectFixesToHold } from '../kit/fixes-hold';
import { memoryWorkshop } from '../kit/memory-workshop';
import { sampleText } from '../kit/samples';
import { slippedRecipes } from '../kit/slipped-recipes';

const faulty = readdirSync('samples')
    .filter((name) => name.endsWith('.kerf') && name.includes('faulty'))
    .map((name) => name.replace('.kerf', ''));

/** Fixed, so that a run tells of the change and not of the draw; `npm run fuzz` draws anew. */
const seed = 20;

describe('after any single fix its finding is gone, and nothing new is said of what the fix wrote', () => {
    it.each(faulty)('%s', { timeout: 300_000 }, async (name) => {
        const [text, art] = sampleText(name);
        const judged = await expectFixesToHold(await memoryWorkshop(art), text);
        // Looked at, each of them: what could be judged only once something else was mended.
        expect([...new Set(judged)].toSorted()).toEqual([
            'grain-unknown > movement-across-inlay', // a grain that runs the other way is a fact that only the maker knows
            'wrong-unit > jams-before-floor', // 0.12 um or thou instead of mm: a clearance that is too small
        ]);
    });

    it(`recipes with slips at random (seed ${seed})`, { timeout: 300_000 }, async () => {
        const kit = await memoryWorkshop(drawings);
        const holds = fc.asyncProperty(slippedRecipes, async (text) => void (await expectFixesToHold(kit, text)));
        await fc.assert(holds, { numRuns: 6, seed });
    });
});
