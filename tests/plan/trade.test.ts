import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { allTrades, planTrade } from '../../shared/plan/plan-trade';
import { tradeView } from '../../shared/view/trade-view';
import { planOf } from '../kit/plan-of';
import { fillRecipe } from '../kit/shop';

const hollow = async (more: string) => planOf(fillRecipe({ pocket: `art flag depth 0.5 mm ${more}`, wood: 'walnut-12' }));
const tradeOf = async (more = '') => planTrade(await hollow(more), 0, new Memo());
const byPasses = async () => (await tradeOf('air off'))!.filter((way) => way.sooner !== true);

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
        for (const way of await byPasses()) {
            const { settings, machine } = (await hollow(`passes ${way.passes} air off`)).steps[0]!.laser!;
            expect(way.speed, `${way.passes}`).toBe(settings!.speed);
            expect(way.power).toBe(settings!.power);
            expect(way.depth).toEqual(settings!.gives);
            expect(Math.abs(way.time / machine - 1), `${way.passes}`).toBeLessThan(0.01);
        }
    });

    it('takes less of each pass and more time, the more passes there are', async () => {
        const ways = await byPasses();
        expect(ways.length).toBeGreaterThan(4);
        for (const [at, way] of ways.slice(1).entries()) {
            expect(way.time).toBeGreaterThan(ways[at]!.time);
            expect(way.each).toBeLessThan(ways[at]!.each);
            expect(way.dose).toBeLessThan(ways[at]!.dose);
        }
        expect(ways[0]).toMatchObject({ passes: 1, measured: false });
    });

    it('finds a lower speed and power for narrow art, whose lines are shorter than the head’s turns', async () => {
        const narrow = async (more: string) =>
            planOf(fillRecipe({ pocket: `rectangle 4 x 60 mm at 50, 50 mm depth 0.5 mm ${more} air off`, wood: 'walnut-12' }));
        const plan = await narrow('scan at 0 deg');
        const ways = planTrade(plan, 0, new Memo())!;
        const [chosen, sooner] = [ways.find((way) => way.chosen)!, ways.find((way) => way.sooner === true)!];
        expect(ways.at(-1)).toBe(sooner);
        expect(sooner.time).toBeLessThan(0.9 * chosen.time);
        expect(sooner).toMatchObject({ passes: chosen.passes, measured: true });
        expect(sooner.dose / chosen.dose).toBeCloseTo(1, 1);
        expect(sooner.depth.value).toBeCloseTo(chosen.depth.value, 1);
        // The same, written into a recipe, takes that long.
        const { machine } = (await narrow(`scan at 0 deg speed ${sooner.speed} mm/s passes ${sooner.passes}`)).steps[0]!.laser!;
        expect(sooner.time / machine).toBeCloseTo(1, 2);
        expect(tradeView(ways).trade!.at(-1)!.words).toMatch(/^2 passes at \d+ mm\/s and \d+ %, where the head turns sooner: /);
        // Long lines are burnt fastest at full speed.
        const long = planOf(
            fillRecipe({ pocket: 'rectangle 90 x 20 mm at 50, 50 mm depth 0.5 mm scan at 0 deg air off', wood: 'walnut-12' }),
        );
        expect(planTrade(await long, 0, new Memo())!.some((way) => way.sooner === true)).toBe(false);
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
