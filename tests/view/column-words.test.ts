import { describe, expect, it } from 'vitest';
import type { Plan } from '../../shared/plan/plan';
import { columnWords } from '../../shared/view/column-words';
import { planOf } from '../kit/plan-of';
import { coupon, inlayRecipe, shop } from '../kit/shop';

const recipe = (body: string): string =>
    `${shop}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n blank b { of ash-10 size 100 x 100 mm grain along width }\n ${body}\n}`;
const pond = 'engrave pond on b { rectangle 20 x 20 mm at 30, 50 mm depth 0.5 mm air off }\n';

/** After all steps, or after so many. */
const at = (plan: Plan, x: number, y: number, frame = plan.steps.length, blank = 'b') => columnWords(plan, frame, blank, x, y);

describe('what lies in one place, in words', () => {
    it('a laid veneer, its glue and the board below, with how thick each is', async () => {
        const plan = await planOf(inlayRecipe());
        // In the flag's cloth, 18 by 7 mm in its art; the pocket is 0.55 mm deep, 0.06 mm of it glue, and 0.1 mm is sanded off.
        expect(at(plan, 98, 67, plan.steps.length, 'tray')).toBe(
            'From the top: 0.39 mm maple-06, 0.06 mm wood-glue (holds since day 1), 11.45 mm walnut-12; dug by pocket.',
        );
        expect(at(plan, 5, 5, plan.steps.length, 'tray')).toBe('From the top: 11.9 mm walnut-12.');
    });
    it('what a veneer is stuck to: under it, bare where it is burnt away, and no longer once it is peeled', async () => {
        const plan = await planOf(inlayRecipe());
        const relief = plan.steps.findIndex(({ laser }) => laser?.step.name === 'relief');
        expect(at(plan, 2, 2, 0, 'bird')).toBe('From the top: 0.6 mm maple-06, the foil behind it.');
        expect(at(plan, 45, 38, relief + 1, 'bird')).toBe(
            'It is burnt through here: nothing is left of bird; the foil behind it lies open.',
        );
        expect(at(plan, 2, 2, plan.steps.length, 'bird')).toBe('From the top: 0.6 mm maple-06.');
    });
    it('glue that has not set yet, under the backing', async () => {
        const plan = await planOf(inlayRecipe());
        const inlay = plan.steps.findIndex(({ inlay }) => inlay !== undefined);
        const words = at(plan, 98, 67, inlay + 1, 'tray');
        expect(words).toMatch(
            /^From the top: the backing of bird, 0\.6 mm maple-06, 0\.06 mm wood-glue \(still wet, holds on day 1/,
        );
        expect(words).toContain('the surface lies 0.11 mm above the face');
    });
    it('an open pocket, a colour, coats and tape', async () => {
        const plan = await planOf(
            recipe(
                `${pond} engrave word on b { rectangle 10 x 10 mm at 80, 50 mm tone 60 % air off }\n seal b with shellac { coats 2 }\n wait 2 h\n mask b`,
            ),
        );
        expect(at(plan, 30, 50, 1)).toBe('From the top: 9.5 mm ash-10; the surface lies 0.5 mm below the face; dug by pond.');
        expect(at(plan, 80, 50, 2)).toBe('From the top: 10 mm ash-10; darkened by word.');
        expect(at(plan, 5, 5, 3)).toMatch(/^From the top: 2 coats of shellac \((still wet|dry since)/);
        expect(at(plan, 5, 5, 4)).toBe('From the top: 2 coats of shellac (dry since day 1), 10 mm ash-10.');
        expect(at(plan, 30, 50)).toMatch(/^From the top: masking tape, 0\.5 mm of air, 2 coats of shellac/);
    });
    it('what is gone, what lies beside the blank, and a blank that is not there', async () => {
        const plan = await planOf(recipe(`${pond} cut hole on b { circle 10 mm at 80, 80 mm air on }`));
        expect(at(plan, 80, 80)).toBe('Nothing is left of b here: it was cut away.');
        expect(at(plan, 80, 80, 1)).toBe('From the top: 10 mm ash-10.');
        expect(at(plan, 180, 80)).toBe('This lies beside b.');
        expect(at(plan, 1, 1, 0, 'nowhere')).toBeUndefined();
        expect(at(plan, 1, 1, 99)).toBeUndefined();
    });
    it('the maker’s own unit', async () => {
        const plan = await planOf(recipe(pond).replace('size 100 x 100 mm', 'size 4 x 4 in'));
        expect(at(plan, 30, 50)).toMatch(/^From the top: 0\.37\d* in ash-10; the surface lies 0\.0\d+ in below the face/);
    });
});
