import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ArtFile, Cancelled } from '../../server/engine/jobs';
import { PlanEngine } from '../../server/engine/plan-engine';
import { memoryWorkshop } from '../kit/memory-workshop';
import { art, fillRecipe, inlayRecipe } from '../kit/shop';

const files: ArtFile[] = Object.entries(art).map(([name, text]) => ({
    uri: `file:///shop/${name}`,
    version: '1',
    bytes: new TextEncoder().encode(text),
}));

function engine(): PlanEngine {
    const fresh = new PlanEngine();
    for (const file of files) fresh.setArt(file);
    return fresh;
}

/** Edits that change one thing of a recipe each. */
const edits: readonly ((text: string) => string)[] = [
    (text) => text.replace(/depth [\d.]+ mm/, 'depth 0.62 mm'),
    (text) => text.replace(' mirror ', ' '),
    (text) => text.replace(/clearance [\d.]+ mm/, 'clearance 0.2 mm'),
    (text) => text.replace('flush then 0.10 mm', 'flush then 0.2 mm'),
    (text) => text.replace('art flag', 'art flag .cloth'),
    (text) => text.replace('make 1', 'make 7'),
    (text) => text.replace('power 45 W', 'power 30 W'),
    (text) => `// a line that moves every place down\n${text}`,
    (text) => text.replace('backing foil', ''),
    (text) => text.replace('gives 0.34 mm', 'gives 0.40 mm'),
];

describe('a plan is the same however it was reached', () => {
    it('after any edits, an engine that remembers says what a fresh one says', async () => {
        const kit = await memoryWorkshop(art);
        const old = engine();
        await fc.assert(
            fc.asyncProperty(
                fc.constantFrom(inlayRecipe(), fillRecipe()),
                fc.array(fc.nat(edits.length - 1), { maxLength: 4 }),
                async (start, chosen) => {
                    let text = start;
                    for (const index of chosen) text = edits[index]!(text);
                    const [recipe] = kit.workshop.recipes(await kit.open(text));
                    const job = { do: 'json', recipe: recipe!, textFindings: [], shapes: true } as const;
                    expect(old.run(job)).toEqual(engine().run(job));
                },
            ),
            { numRuns: 25 },
        );
    });

    it('and survives the trip to a worker as plain data', async () => {
        const kit = await memoryWorkshop(art);
        const [recipe] = kit.workshop.recipes(await kit.open(inlayRecipe()));
        expect(structuredClone(recipe)).toEqual(recipe);
        expect(engine().run({ do: 'examine', recipe: structuredClone(recipe!) })).toEqual(
            engine().run({ do: 'examine', recipe: recipe! }),
        );
    });

    it('and a picture that does not wait for fixes says what the finished one says, and which fixes are to come', async () => {
        const kit = await memoryWorkshop(art);
        for (const text of [fillRecipe(), inlayRecipe().replace(/depth [\d.]+ mm/, 'depth 0.25 mm')]) {
            const [recipe] = kit.workshop.recipes(await kit.open(text));
            const setting = { uri: 'file:///shop/a.kerf', textVersion: 1, recipes: [] };
            const job = { do: 'bench', recipe: recipe!, textFindings: [], setting } as const;
            const used = engine();
            const soon = used.run({ ...job, soon: true });
            const whole = used.run(job);
            const ruleAndPlace = ({ findings }: typeof soon) => findings.map(({ rule, where }) => `${rule} ${where.offset}`);
            expect(ruleAndPlace(soon)).toEqual(ruleAndPlace(whole));
            for (const [index, { trying = false, ...finding }] of soon.findings.entries()) {
                if (trying) expect(finding.fix).toBeUndefined();
                else expect(finding).toEqual(whole.findings[index]);
            }
            expect(whole.findings.some(({ trying }) => trying)).toBe(false);
            expect(soon.findings.some(({ trying }) => trying)).toBe(text !== fillRecipe());
            expect([soon.more, whole.more]).toEqual([true, undefined]);
            expect(soon.steps.some(({ trade }) => trade !== undefined)).toBe(false);
            expect(whole.steps.some(({ trade }) => trade !== undefined)).toBe(true);
            // What has been worked out is not left out again.
            expect(used.run({ ...job, soon: true })).toEqual(whole);
        }
    });

    it('and fixes are given up between two rules, once nobody waits for them', async () => {
        const kit = await memoryWorkshop(art);
        const [recipe] = kit.workshop.recipes(await kit.open(inlayRecipe().replace(/depth [\d.]+ mm/, 'depth 0.25 mm')));
        const stages: string[] = [];
        const busy = new PlanEngine((stage) => {
            stages.push(stage);
            if (stages.filter((each) => each === 'fixes').length === 2) throw new Cancelled();
        });
        for (const file of files) busy.setArt(file);
        expect(() => busy.run({ do: 'examine', recipe: recipe! })).toThrow(Cancelled);
        expect(stages.at(-1)).toBe('fixes');
    });
});
