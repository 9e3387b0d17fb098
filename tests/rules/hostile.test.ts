import fc from 'fast-check';
import { expect, it } from 'vitest';
import { allRules } from '../../shared/rules/all-rules';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { all, workshop } from './harness';

workshop();

/** What is said of the text itself is the language's. */
const ofTheTrade = new Set([...allRules.map((rule) => rule.page.id), 'not-worked-out']);

const oddNumbers = ['0', '-1', '1e308', '-1e308', '1e-308', '0.0000001', '123456789', '99999', '7', '1/0', 'x', ''];
const good = [
    inlayRecipe(),
    fillRecipe(),
    inlayRecipe({ inlay: 'clearance 0.15 mm glue wood-glue marks 3' }),
    inlayRecipe({
        pocket: 'art diamond depth 0.55 mm offset 0.04 mm air off',
        relief: 'art diamond inverse within grown 6 mm turned 90 deg mirror depth through offset 0.02 mm air off',
        inlay: 'clearance 6 thou glue wood-glue marks 2',
        after: 'sand tray { flush then 0.02 mm grits 120 } finish tray with drying-oil { coats 2 } wait 2 h',
    }),
];

/** A recipe with some of its numbers replaced by what nobody would write. */
const hostile = fc
    .tuple(
        fc.constantFrom(...good),
        fc.array(fc.tuple(fc.nat(80), fc.constantFrom(...oddNumbers)), { minLength: 1, maxLength: 5 }),
    )
    .map(([text, edits]) => {
        let out = text;
        for (const [which, number] of edits) {
            const numbers = [...out.matchAll(/(?<![\w#-])\d+(\.\d+)?/g)];
            const at = numbers[which % numbers.length]!;
            out = out.slice(0, at.index) + number + out.slice(at.index + at[0].length);
        }
        return out;
    });

it('numbers that nobody would write give findings in whole words, never a failed check', async () => {
    await fc.assert(
        fc.asyncProperty(hostile, async (text) => {
            for (const finding of (await all(text)).filter(({ rule }) => ofTheTrade.has(rule))) {
                expect(finding.message).not.toMatch(/could not be (made|worked out)/);
                expect(finding.message, finding.rule).not.toMatch(/NaN|undefined|Infinity|\[object/);
                for (const fix of finding.fixes) {
                    for (const change of fix.changes) {
                        if ('text' in change)
                            expect(change.text, finding.rule).not.toMatch(/NaN|undefined|Infinity|endless|unknown/);
                    }
                }
                for (const spot of finding.spots ?? [])
                    expect(Number.isFinite(spot.x + spot.y + spot.size), finding.rule).toBe(true);
            }
        }),
        { numRuns: 120 },
    );
}, 120_000);

it('a name that looks like a number is told as it is written', async () => {
    const found = await all(inlayRecipe({ after: 'sand tray { flush grits 1e999, 180 }' }));
    expect(found.map(({ message }) => message)).toContainEqual(expect.stringMatching(/^There is no grit called `1e999`\./));
});
