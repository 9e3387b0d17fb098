import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { allTrades, planTrade } from '../../shared/plan/plan-trade';
import { tradeView } from '../../shared/view/trade-view';
import { planOf } from '../kit/plan-of';
import { fillRecipe } from '../kit/shop';

const hollow = async (more: string) => planOf(fillRecipe({ pocket: `art flag depth 0.5 mm ${more}`, wood: 'walnut-12' }));
const tradeOf = async (more = '') => planTrade(await hollow(more), 0, new Memo());

describe('what other numbers of passes would cost', () => {
    it('has the planned way among them, with the plan’s own figures', async () => {
        const { settings, machine } = (await hollow('air off')).steps[0]!.laser!;
        const chosen = (await tradeOf('air off'))!.filter((way) => way.chosen);
        expect(chosen).toHaveLength(1);
        expect(chosen[0]).toMatchObject({
            passes: settings!.passes,
            power: settings!.power,
            speed: settings!.speed,
            depth: settings!.gives,
        });
        expect(chosen[0]!.time).toBeCloseTo(machine, 9);
    });

    it('leaves the outline’s time as it is planned', async () => {
        const { machine } = (await hollow('outline 2 air off')).steps[0]!.laser!;
        expect((await tradeOf('outline 2 air off'))!.find((way) => way.chosen)!.time).toBeCloseTo(machine, 9);
    });

    it('is what a plan with that many passes comes to', async () => {
        for (const way of (await tradeOf('air off'))!) {
            const { settings, machine } = (await hollow(`passes ${way.passes} air off`)).steps[0]!.laser!;
            expect(way.speed, `${way.passes}`).toBe(settings!.speed);
            expect(way.power).toBe(settings!.power);
            expect(way.depth).toEqual(settings!.gives);
            expect(Math.abs(way.time / machine - 1), `${way.passes}`).toBeLessThan(0.01);
        }
    });

    it('takes less of each pass and more time, the more passes there are', async () => {
        const ways = (await tradeOf('air off'))!;
        expect(ways.length).toBeGreaterThan(4);
        for (const [at, way] of ways.slice(1).entries()) {
            expect(way.time).toBeGreaterThan(ways[at]!.time);
            expect(way.each).toBeLessThan(ways[at]!.each);
            expect(way.dose).toBeLessThan(ways[at]!.dose);
        }
        expect(ways[0]).toMatchObject({ passes: 1, measured: false });
    });

    it('keeps what is written, and has nothing to offer where power and speed are', async () => {
        for (const way of (await tradeOf('speed 150 mm/s air off'))!) expect(way.speed).toBe(150);
        expect(await tradeOf('power 80 % speed 300 mm/s air off')).toBeUndefined();
        expect(
            await planTrade(await planOf(fillRecipe({ pocket: 'art flag tone 60 % air off' })), 0, new Memo()),
        ).toBeUndefined();
        expect(await tradeOf('reached 0.2 mm after 1 air off')).toBeUndefined();
        const plan = await hollow('air off');
        expect([...allTrades(plan, new Memo()).keys()]).toEqual([0]);
    });

    it('is said in words, beyond the squares too', async () => {
        const [first, second] = tradeView((await tradeOf('air off'))!).trade!;
        expect(first!.words).toMatch(
            /^1 pass: \d+ (s|min).*, ± 0\.\d+ mm, 0\.5 mm and 1\.\d+ J\/mm² a pass, beyond the squares$/,
        );
        expect(second!.words).toMatch(/^2 passes: .* J\/mm² a pass$/);
    });
});
