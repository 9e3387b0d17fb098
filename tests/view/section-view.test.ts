import { describe, expect, it } from 'vitest';
import { area } from '../../shared/geometry/measure';
import { sectionView } from '../../shared/view/section-view';
import { planOf } from '../kit/plan-of';
import { coupon, shop } from '../kit/shop';

const holed = (backing: string, then = ''): string =>
    `${shop}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n blank b { of ash-10 size 100 x 100 mm grain along width ${backing} }
 engrave pond on b { rectangle 20 x 20 mm at 30, 50 mm depth 0.5 mm air off }\n cut hole on b { circle 10 mm at 80, 80 mm air on }\n ${then}\n}`;

/** Kinds of what lies at x = 80 mm, in the middle of the hole, from the bottom up. */
async function inHole(backing: string, then = ''): Promise<string[]> {
    const plan = await planOf(holed(backing, then));
    const face = plan.faces.at(-1)!.find(({ blank }) => blank === 'b')!;
    const { spans } = sectionView(plan, face, plan.blanks[0]!, 80);
    return spans.filter(({ from, to }) => from < 80 && to > 80).map(({ kind }) => kind);
}

describe('the section where something was cut out', () => {
    it('shows nothing where nothing is left', async () => expect(await inHole('')).toEqual([]));
    it('keeps the waste of a hole on its backing until that is peeled', async () => {
        expect(await inHole('backing tape')).toEqual(['foil', 'wood']);
        expect(await inHole('backing tape', 'peel b')).toEqual([]);
    });
    it('leaves a groove along a cut that does not come through, and all in its place', async () => {
        const weak = holed('').replace(
            'circle 10 mm at 80, 80 mm',
            'circle 10 mm at 80, 80 mm power 20 % speed 500 mm/s passes 1',
        );
        const plan = await planOf(weak);
        const face = plan.faces.at(-1)!.find(({ blank }) => blank === 'b')!;
        const grooves = face.cells.filter(({ column }) => column.digs.some(({ step }) => step === 1));
        // The drawn circle of 10 mm, the beam half a kerf inside of it.
        const width = plan.steps[1]!.laser!.kerf!.face.value;
        expect(grooves).toHaveLength(1);
        expect(area(grooves[0]!.region) / (Math.PI * (10 - width) * width)).toBeCloseTo(1, 2);
        expect(area(face.body.region)).toBeCloseTo(100 * 100, 6);
    });
});
