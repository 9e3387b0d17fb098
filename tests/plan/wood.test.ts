import { describe, expect, it } from 'vitest';
import { workFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { coupon, fillRecipe, inlayRecipe } from '../kit/shop';

async function factsOf(text: string, kind: string): Promise<Record<string, string>> {
    const plan = await planOf(text);
    const step = plan.steps.find((each) => each.step.kind === kind)!;
    return Object.fromEntries(workFacts(step).map(({ label, value }) => [label, value]));
}

describe('what the woods say to an inlay', () => {
    it('is shown with its contrast, its movement and its stack at worst', async () => {
        const facts = await factsOf(inlayRecipe(), 'inlay');
        expect(facts.contrast).toMatch(/^\d+ against black-walnut \(CIEDE2000\)$/);
        expect(facts['moves apart']).toMatch(/^0\.\d+ mm across the (width|height) over a year indoors$/);
        expect(facts['stands proud']).toMatch(/^0\.\d+ mm ± 0\.\d+ mm \(at worst -?0\.\d+ mm to 0\.\d+ mm\)$/);
    });
    it('is never likelier to go further than at worst, with a coupon or without', async () => {
        // Both ends of a range, or a value with its plus and minus.
        const ends = (text: string): [number, number] => {
            const [from, to] = [...text.matchAll(/-?[\d.]+(?= mm)/g)].map(Number) as [number, number];
            return text.includes('±') ? [from - to, from + to] : [from, to];
        };
        for (const text of [inlayRecipe(), inlayRecipe().replace(coupon('walnut-12', 'shed'), '')]) {
            for (const value of [
                (await factsOf(text, 'inlay'))['stands proud']!,
                (await factsOf(text, 'inlay'))['left after sanding']!,
            ]) {
                const [likely, worst] = value.replace(/^.*\(likely /, '').split(/at worst /) as [string, string];
                const [low, high] = ends(likely);
                expect(low, value).toBeGreaterThanOrEqual(ends(worst)[0]);
                expect(high, value).toBeLessThanOrEqual(ends(worst)[1]);
            }
        }
    });
    it('says both ends where a guess reaches further to one side', async () => {
        const facts = await factsOf(inlayRecipe().replace(coupon('walnut-12', 'shed'), ''), 'inlay');
        expect(facts['stands proud']).toMatch(/^0\.\d+ mm \(likely -0\.\d+ mm to 0\.\d+ mm, at worst -0\.\d+ mm to 0\.\d+ mm\)$/);
    });
    it('moves more where the grains cross', async () => {
        const movement = async (text: string) => (await planOf(text)).steps.find(({ inlay }) => inlay)!.wood!.movement!.movement;
        const crossed = inlayRecipe().replace('size 80 x 70 mm grain along width', 'size 80 x 70 mm grain along height');
        expect(await movement(crossed)).toBeGreaterThan(2 * (await movement(inlayRecipe())));
    });
    it('leaves the movement out where no grain is written', async () => {
        const facts = await factsOf(inlayRecipe().replace('size 80 x 70 mm grain along width', 'size 80 x 70 mm'), 'inlay');
        expect(facts).not.toHaveProperty('moves apart');
    });
    it('and the contrast of a fill', async () => {
        expect((await factsOf(fillRecipe(), 'fill')).contrast).toContain('against white-ash');
    });
});
