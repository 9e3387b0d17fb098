import { describe, expect, it } from 'vitest';
import { floorLeft } from '../../shared/rules/helpers/what-is-left';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const tray = (least: string, outline: string) => `${shop.replace('spot 0.15 mm', `spot 0.15 mm ${least}`)}
recipe tray { laser shed  blank lid { of walnut-12  size 90 x 60 mm  grain along width }
  engrave well on lid { rectangle 40 x 30 mm  depth 0.5 mm  passes 2  ${outline} } }`;

describe('the floor that an outline pass leaves', () => {
    const made = async (least: string, outline: string) => {
        const plan = await planOf(tray(least, outline));
        const [step] = plan.steps;
        return { floor: floorLeft(plan, step!)!.value, laser: step!.laser! };
    };

    it('is that under the rest where the laser holds the power for it', async () => {
        const { floor, laser } = await made('', 'outline 4');
        expect(laser.outline!.deepest! - laser.depth!.value).toBeLessThan(0.02);
        expect(floor).toBeCloseTo(11.5, 6);
    });

    it('is less by what it digs deeper where the least power is too much', async () => {
        const { floor, laser } = await made('least power 14 W', 'outline 4');
        expect(laser.outline!.power).toBe(14);
        expect(laser.outline!.deepest!).toBeGreaterThan(0.6);
        expect(floor).toBeCloseTo(12 - laser.outline!.deepest!, 6);
        expect((await made('least power 14 W', '')).floor).toBeCloseTo(11.5, 6);
    });
});
