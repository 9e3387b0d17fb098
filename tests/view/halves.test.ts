import { describe, expect, it } from 'vitest';
import { contains } from '../../shared/geometry/measure';
import { rectangle } from '../../shared/geometry/shapes';
import { Memo } from '../../shared/plan/memo';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { roomyPlace } from '../../shared/view/roomy-place';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';

const setting = { uri: 'file:///shop/tray.kerf', textVersion: 1, recipes: [] };

async function halvesOf(relief?: string) {
    const plan = await planOf(inlayRecipe(relief === undefined ? {} : { relief }));
    const view = makeBenchView(plan, [], setting, new Memo());
    return { inlay: view.inlays[0]!, plan: plan.steps.find(({ inlay }) => inlay !== undefined)!.inlay! };
}

describe('the halves of an inlay in the picture', () => {
    it('that fit have nothing pointed at', async () => {
        const { inlay } = await halvesOf();
        expect(inlay).toMatchObject({ good: true });
        expect(inlay.amiss).toBeUndefined();
    });

    it('one not mirrored: says why, and points into what lands on wood and into what stays empty', async () => {
        const { inlay, plan } = await halvesOf('art flag inverse within grown 6 mm depth through air off');
        expect(inlay.good).toBe(false);
        expect(inlay.verdict).toMatch(/^Turned over it is the wrong way round and does not go in: .* land on the board/);
        const { collides, empty } = inlay.amiss!;
        expect(contains(plan.collides, collides!.x, collides!.y)).toBe(true);
        expect(contains(plan.empty, empty!.x, empty!.y)).toBe(true);
    });

    it('other art in one of them is no matter of turning over', async () => {
        const { inlay } = await halvesOf('art diamond inverse within grown 6 mm mirror depth through air off');
        expect(inlay.verdict).toMatch(/^It does not go in: /);
    });
});

describe('a roomy place in a region', () => {
    it('is where it is widest', () => {
        const step = { rings: [...rectangle(0, 0, 4, 20).rings, ...rectangle(10, 8, 30, 4).rings] };
        const { x, y } = roomyPlace(step)!;
        expect(x).toBeCloseTo(25);
        expect(y).toBeGreaterThan(8);
        expect(y).toBeLessThan(12);
    });

    it('of nothing is nowhere', () => {
        expect(roomyPlace({ rings: [] })).toBeUndefined();
    });
});
