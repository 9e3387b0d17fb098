import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { planOf } from '../kit/plan-of';
import { coupon, shop } from '../kit/shop';

const recipe = (cut: string): string =>
    `${shop}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n art flag "flag.svg"\n blank b { of ash-10 size 100 x 100 mm grain along width }\n engrave e on b { art flag depth 0.5 mm air off }\n ${cut}\n}`;

async function viewOf(cut: string) {
    return makeBenchView(await planOf(recipe(cut)), [], { uri: '', textVersion: 1, recipes: [] }, new Memo());
}

describe('the picture of a piece that was cut out', () => {
    it('has the outline of what is left, and a section without the waste', async () => {
        const view = await viewOf('cut rim on b { circle 80 mm air on }');
        const [before, after] = [view.frames[1]!.pieces[0]!, view.frames[2]!.pieces[0]!];
        expect(before.outline).toBeUndefined();
        expect(view.paths[after.outline!]).toMatch(/^M/);
        const ends = (spans: readonly { from: number; to: number }[]) => [
            Math.min(...spans.map(({ from }) => from)),
            Math.max(...spans.map(({ to }) => to)),
        ];
        expect(ends(before.section.spans)).toEqual([0, 100]);
        const [from, to] = ends(after.section.spans);
        // The circle about (50, 50) at the height of the section.
        const half = Math.sqrt(40 ** 2 - (after.section.y - 50) ** 2);
        // Less what the beam takes along the cut: half a spot, a tenth of a millimetre.
        expect(from).toBeGreaterThan(50 - half - 0.01);
        expect(from).toBeLessThan(50 - half + 0.15);
        expect(to).toBeGreaterThan(50 + half - 0.15);
        expect(to).toBeLessThan(50 + half + 0.01);
    });
    it('shows a hole as a gap, and stays whole while tabs hold it', async () => {
        const holed = await viewOf('cut hole on b { circle 10 mm at 85, 85 mm air on }');
        expect(holed.paths[holed.frames[2]!.pieces[0]!.outline!]!.match(/M/g)).toHaveLength(2);
        expect((await viewOf('cut rim on b { circle 80 mm tabs 3 air on }')).frames[2]!.pieces[0]!.outline).toBeUndefined();
    });
});
