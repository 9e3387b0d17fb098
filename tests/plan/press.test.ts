import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { planPress } from '../../shared/plan/plan-press';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe } from '../kit/shop';

const pressed = async (text: string) => {
    const plan = await planOf(text);
    const index = plan.steps.findIndex(({ step }) => step.kind === 'inlay' || step.kind === 'fill');
    return { plan, inlay: plan.steps[index]!.inlay, press: planPress(plan, index, new Memo()) };
};

describe('the press of a recipe', () => {
    it('reaches the glue with enough clearance', async () => {
        const { inlay, press } = await pressed(inlayRecipe());
        expect(press).toMatchObject({ bottoms: true, stops: [] });
        expect(press!.insertion).toBeCloseTo(inlay!.pocketLaser.settings!.gives.value - inlay!.film.value, 2);
        expect(inlay!.fit!.bottoms).toBe(true);
    });
    it('is stopped by the walls without, as the fit says too', async () => {
        const { inlay, press } = await pressed(inlayRecipe({ inlay: 'clearance 0.02 mm glue wood-glue' }));
        expect(press!.bottoms).toBe(false);
        expect(inlay!.fit!.bottoms).toBe(false);
        expect(press!.stops.length).toBeGreaterThan(0);
    });
    it('lies on the board when the halves do not match', async () => {
        const { press } = await pressed(inlayRecipe({ relief: 'art flag inverse within grown 6 mm depth through air off' }));
        expect(press!.insertion).toBeLessThan(0.05);
    });
    it('has no answer for a fill, or without a spot', async () => {
        expect((await pressed(fillRecipe())).press).toBeUndefined();
        expect((await pressed(inlayRecipe().replace('spot 0.15 mm', ''))).press).toBeUndefined();
    });
});
