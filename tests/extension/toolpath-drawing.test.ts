import { describe, expect, it } from 'vitest';
import { doseAt, doseRange, inkOf, slowShare } from '../../extension/bench/webview/toolpath/toolpath-drawing';
import { Memo } from '../../shared/plan/memo';
import { type ToolpathView, toolpathView } from '../../shared/view/toolpath-view';
import { planOf } from '../kit/plan-of';
import { coupon, shop } from '../kit/shop';

const viewOf = async (steps: string, laser = shop): Promise<ToolpathView> => {
    const plan = await planOf(
        `${laser}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n blank b { of ash-10 size 100 x 80 mm grain along width }\n${steps}\n}`,
    );
    return toolpathView(plan, 0, new Memo())!;
};

describe('dose and pace of a toolpath', () => {
    const scan = 'engrave pond on b { rectangle 20 x 10 mm at 30, 40 mm power 60 % speed 300 mm/s air off }';

    it('tells the energy of a scanned area, evenly', async () => {
        const view = await viewOf(scan);
        // 27 W over 300 mm/s and lines 0.1 mm apart.
        expect(view.works[0]!.dose).toBeCloseTo(27 / (300 * 0.1), 3);
        const range = doseRange(view)!;
        expect(range.most).toBeCloseTo(range.least, 9);
        expect(slowShare(view)).toBe(0);
        expect(inkOf(range.most, range)).toBe(1);
    });

    it('is darker in the corners of a cut, where the head slows', async () => {
        const view = await viewOf('cut out on b { rectangle 20 x 10 mm at 30, 40 mm power 60 % speed 200 mm/s passes 1 air on }');
        const range = doseRange(view)!;
        expect(range.most / range.least).toBeGreaterThan(1.1);
        expect(inkOf(range.least, range)).toBeLessThan(inkOf(range.most, range));
        expect(slowShare(view)).toBeGreaterThan(0.01);
        const work = view.works[0]!;
        const lit = [...work.lit].flatMap((on, i) => (on === '1' ? [i] : []));
        for (const i of lit) expect(doseAt(work, i)).toBeGreaterThanOrEqual(work.dose * 0.99);
    });

    it('has one dose where the power follows the speed', async () => {
        const cut = 'cut out on b { rectangle 20 x 10 mm at 30, 40 mm power 60 % speed 200 mm/s passes 1 air on }';
        const range = doseRange(
            await viewOf(cut, shop.replace('acceleration 6000 mm/s2', 'acceleration 6000 mm/s2 output with-speed')),
        )!;
        expect(range.most).toBeCloseTo(range.least, 9);
    });
});
