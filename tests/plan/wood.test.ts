import { describe, expect, it } from 'vitest';
import { workFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe } from '../kit/shop';

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
