import { describe, expect, it } from 'vitest';
import { area, bounds } from '../../shared/geometry/measure';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

async function regionOf(place: string, kind = 'engrave', rest = 'tone 80 %') {
    const plan = await planOf(
        `${shop}
recipe tags "Tags" {
  laser shed
  art dot "dot.svg"
  blank tray { of walnut-12 size 200 x 150 mm grain along width }
  ${kind} tag on tray { ${place} ${rest} }
}`,
        {
            'dot.svg':
                '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10"><rect width="4" height="10"/></svg>',
        },
    );
    return plan.steps[0]!.laser!;
}

describe('copies on a grid', () => {
    it('lie about the place where one would lie', async () => {
        const { region } = await regionOf('art dot at 100, 70 mm repeat 4 x 3 every 20 x 15 mm');
        expect(region.rings).toHaveLength(12);
        expect(area(region)).toBeCloseTo(12 * 40, 6);
        // The middle of the page is what is placed; the bar fills its left part.
        expect(bounds(region)).toEqual({ minX: 65, minY: 50, maxX: 129, maxY: 90 });
    });
    it('are each turned about its own middle', async () => {
        const { region } = await regionOf('art dot at 100, 70 mm turned 90 deg repeat 2 x 1 every 30 x 10 mm');
        const box = bounds(region)!;
        expect([box.minX, box.maxX, box.minY, box.maxY].map((value) => Math.round(value))).toEqual([80, 120, 65, 69]);
    });
    it('are turned as art is, where they are shapes', async () => {
        const { region } = await regionOf('rectangle 30 x 10 mm turned 90 deg at 50, 50 mm');
        const box = bounds(region)!;
        expect([box.minX, box.maxX, box.minY, box.maxY].map((value) => Math.round(value))).toEqual([45, 55, 35, 65]);
    });
    it('have a boundary each, or one blank together', async () => {
        const each = await regionOf('art dot inverse within rectangle 12 x 12 mm at 100, 70 mm repeat 2 x 2 every 20 x 20 mm');
        expect(each.area).toBeCloseTo(4 * (144 - 40), 6);
        const all = await regionOf('art dot inverse within blank at 100, 70 mm repeat 2 x 2 every 20 x 20 mm');
        expect(all.area).toBeCloseTo(200 * 150 - 4 * 40, 6);
    });
    it('may overlap: what lies under two is burnt once', async () => {
        expect((await regionOf('rectangle 10 x 10 mm at 50, 50 mm repeat 2 x 1 every 5 x 5 mm')).area).toBeCloseTo(150, 6);
    });
    it('are cut out one by one, and take the longer', async () => {
        const one = await regionOf('circle 20 mm', 'cut', 'air on');
        const nine = await regionOf('circle 20 mm repeat 3 x 3 every 30 x 30 mm', 'cut', 'air on');
        expect(nine.region.rings).toHaveLength(9);
        expect(nine.perimeter / one.perimeter).toBeCloseTo(9, 6);
        expect(nine.machine).toBeGreaterThan(8 * one.machine);
    });
});
