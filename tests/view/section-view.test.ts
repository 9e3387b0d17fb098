import { describe, expect, it } from 'vitest';
import { sectionView } from '../../shared/view/section-view';
import { planOf } from '../kit/plan-of';
import { coupon, shop } from '../kit/shop';

const holed = (backing: string): string =>
    `${shop}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n blank b { of ash-10 size 100 x 100 mm grain along width ${backing} }
 engrave pond on b { rectangle 20 x 20 mm at 30, 50 mm depth 0.5 mm air off }\n cut hole on b { circle 10 mm at 80, 80 mm air on }\n}`;

/** Kinds of what lies at x = 80 mm, in the middle of the hole, from the bottom up. */
async function inHole(backing: string): Promise<string[]> {
    const plan = await planOf(holed(backing));
    const face = plan.faces.at(-1)!.find(({ blank }) => blank === 'b')!;
    const { spans } = sectionView(plan, face, plan.blanks[0]!, 80);
    return spans.filter(({ from, to }) => from < 80 && to > 80).map(({ kind }) => kind);
}

describe('the section where something was cut out', () => {
    it('shows nothing where nothing is left', async () => expect(await inHole('')).toEqual([]));
    it('shows the backing that lies open there', async () => expect(await inHole('backing tape')).toEqual(['foil']));
});
