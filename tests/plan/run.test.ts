import { describe, expect, it } from 'vitest';
import { runSections } from '../../shared/sheets/run-section';
import { makeRunFigures } from '../../shared/view/run-figures';
import { makeRunView } from '../../shared/view/run-view';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe } from '../kit/shop';

const hour = 3600;
const figures = 'currency EUR  hourly 30  laser hourly 12  overhead 10 %  markup 50 %';
const shop = `shop s { ${figures} }\n`;
const supply = (plan: Awaited<ReturnType<typeof planOf>>, item: string) => plan.supplies.find((each) => each.item === item)!;

describe('cost of a run', () => {
    it('is absent without a shop, and where the shop has no currency', async () => {
        expect((await planOf(fillRecipe())).cost).toBeUndefined();
        expect((await planOf(`shop s { hourly 30 }\n${fillRecipe()}`)).cost).toBeUndefined();
    });
    it('pays every attended hour, the laser on top, then overhead and markup', async () => {
        const { cost, schedule, recipe } = await planOf(shop + fillRecipe());
        const plain = (schedule.attended / hour) * 30 + (schedule.machine / hour) * 12;
        expect(cost!.work + cost!.machine).toBeCloseTo(plain, 9);
        expect(cost!.total).toBeCloseTo(1.1 * plain, 9);
        expect(cost!.each).toBeCloseTo(cost!.total / recipe.make, 9);
        expect(cost!.price).toBeCloseTo(Math.ceil(cost!.each * 150) / 100, 9);
        expect(cost!.unpriced).toContain('tide-blue');
    });
    it('leaves out wages in another currency', async () => {
        const { cost } = await planOf(`shop s { currency EUR  hourly 30 USD }\n${fillRecipe()}`);
        expect(cost).toMatchObject({ work: 0, hourly: 0 });
    });
});

describe('what supplies cost', () => {
    const board = (price: string, sheet = 'sheet 1000 x 210 mm') =>
        shop + fillRecipe().replace('board ash-10 {', `board ash-10 { ${sheet}  ${price}`).replace('make 2', 'make 7');
    it('whole sheets are bought, and what is cut off the last one is charged', async () => {
        const plan = await planOf(board('price 40 for 1 sheet'));
        // 100 x 100 in a sheet of 1000 x 210, with 3 mm for the saw: two rows, so four columns for seven.
        expect(supply(plan, 'ash-10')).toMatchObject({ amount: 1, unit: 'sheets' });
        const [cutting] = plan.cuttings;
        const end = Math.max(...cutting!.yielded.layout[0]!.map(({ x, width }) => x + width));
        expect(supply(plan, 'ash-10').cost).toBeCloseTo((40 * (end + 3)) / 1000, 9);
    });
    it('a board of which no size is known is charged by area, if it is sold by area', async () => {
        expect(supply(await planOf(board('price 50 for 1 m2', '')), 'ash-10').cost).toBeCloseTo(50 * 0.07, 9);
        expect(supply(await planOf(board('price 50 for 1 sheet', '')), 'ash-10').cost).toBeUndefined();
    });
    it('a resin bought by mass and mixed by volume goes by its density', async () => {
        const text = fillRecipe().replace('kind slow-epoxy', 'kind slow-epoxy  mix 2 : 1 by volume  price 30 for 1 kg');
        const plan = await planOf(shop + text);
        const mixed = plan.steps.find(({ fill }) => fill !== undefined)!.fill!.mix.volume;
        const sum = supply(plan, 'tide-blue').cost! + supply(plan, 'tide-blue hardener').cost!;
        // 15 % stay in the cup; 1.108 g/cm3 is the built-in density.
        expect(sum).toBeCloseTo((30 / 1000) * 2 * mixed * 1.15 * 1.108e-3, 9);
    });
    it('a price in another currency is none', async () => {
        expect(supply(await planOf(board('price 40 USD for 1 sheet')), 'ash-10').cost).toBeUndefined();
    });
    it('pigment and metal powder are supplies of their own', async () => {
        const text = fillRecipe().replace('kind slow-epoxy', 'kind slow-epoxy  powder 30 %  price 20 for 100 g of powder');
        const plan = await planOf(shop + text);
        const { mix } = plan.steps.find(({ fill }) => fill !== undefined)!.fill!;
        expect(mix.powder! / (mix.powder! + mix.mass!)).toBeCloseTo(0.3, 12);
        expect(supply(plan, 'tide-blue metal powder').cost).toBeCloseTo(0.2 * 2 * 1.15 * mix.powder!, 9);
    });
    it('foil, tape and paper have the prices of the shop', async () => {
        const prices = 'price 10 for 1 m2 of foil  price 0.80 for 1 sheet of abrasive';
        const plan = await planOf(`shop s { ${figures}  ${prices} }\n${inlayRecipe()}`);
        expect(supply(plan, 'foil tape').cost).toBeCloseTo(10 * 0.08 * 0.07, 9);
        expect(supply(plan, 'abrasive P120').cost).toBeCloseTo(0.2, 9);
    });
});

describe('a fill', () => {
    const deep = (fill: string, resin = '') =>
        fillRecipe({ pocket: 'art flag depth 4 mm air off', fill }).replace(
            'kind slow-epoxy',
            `kind slow-epoxy  deepest pour 1.5 mm ${resin}`,
        );
    const fillOf = async (text: string) => (await planOf(text)).steps.find(({ fill }) => fill !== undefined)!;
    it('deeper than one pour is poured in layers, as soon as each bonds', async () => {
        const { fill, times } = await fillOf(deep('', 'recoat 4 .. 10 h'));
        expect(fill!.pours).toMatchObject({ count: 3, between: 4 * hour });
        expect(fill!.pours.each).toBeCloseTo(4 / 3, 12);
        expect(times.waiting).toBe(8 * hour);
    });
    it('waits for the whole cure where no recoat window is known', async () => {
        const text = deep('').replace('kind slow-epoxy', 'cure 20 h');
        expect((await fillOf(text)).fill!.pours.between).toBe(20 * hour);
    });
    it('comes back to each layer in the schedule', async () => {
        const { schedule } = await planOf(deep('', 'recoat 4 .. 10 h'));
        const pours = schedule.works.filter(({ part }) => part.startsWith('pour'));
        expect(pours.map(({ part }) => part)).toEqual(['pour 1 of 3', 'pour 2 of 3', 'pour 3 of 3']);
        const starts = schedule.turns.filter(({ piece, work }) => piece === 0 && pours.includes(schedule.works[work]!));
        // To what adding up hours of seconds loses.
        expect(starts[1]!.start - starts[0]!.end + 1e-6).toBeGreaterThanOrEqual(4 * hour);
    });
    it('of one pocket in two steps shares its depth and its volume', async () => {
        const one = (await fillOf(deep('{ overfill 10 % }'))).fill!.mix.volume;
        const plan = await planOf(deep('{ overfill 0 % } wait 5 h fill hollow with tide-blue { overfill 10 % }'));
        const fills = plan.steps.flatMap(({ fill }) => fill ?? []);
        expect(fills.map(({ layer }) => [layer.number, layer.of])).toEqual([
            [1, 2],
            [2, 2],
        ]);
        expect(fills[0]!.mix.volume + fills[1]!.mix.volume).toBeCloseTo(one, 9);
    });
    it('is mixed anew when the cup is used up', async () => {
        // 16 min to use after 8 min of mixing, 4 min a piece: four pieces a cup.
        const text = fillRecipe().replace('make 2', 'make 8').replace('kind slow-epoxy', 'kind slow-epoxy  pot life 24 min');
        const { fill } = await fillOf(text);
        expect(fill!.cups).toMatchObject({ count: 2, pieces: 4 });
        const long = await planOf(text.replace('pot life 24 min', 'pot life 10 h'));
        expect((await planOf(text)).schedule.attended - long.schedule.attended).toBe(8 * 60);
    });
});

describe('the day book', () => {
    it('puts every turn of the hands into one sitting, in order and without overlap', async () => {
        const { schedule } = await planOf(fillRecipe().replace('make 2', 'make 6'));
        const jobs = schedule.sittings.flatMap((sitting) => sitting.jobs);
        const hands = schedule.turns.filter(({ start, end }) => end > start);
        expect(jobs.reduce((sum, job) => sum + job.pieces, 0)).toBe(hands.length);
        expect(jobs.reduce((sum, job) => sum + job.end - job.start, 0)).toBeCloseTo(schedule.attended, 6);
        for (const [i, next] of schedule.sittings.slice(1).entries())
            expect(next.start).toBeGreaterThan(schedule.sittings[i]!.end);
    });
    it('says what cures while the laser runs', async () => {
        const waits = inlayRecipe().replace('engrave relief', 'seal tray with wood-glue-wash wait 10 h engrave relief');
        const { schedule, steps } = await planOf(waits.replace('make 1', 'make 2'));
        const wait = steps.findIndex(({ step }) => step.kind === 'wait');
        const relief = steps.findIndex(({ step }) => step.kind === 'engrave' && step.name === 'relief');
        const sitting = schedule.sittings.find(({ jobs }) => jobs.some(({ step }) => step === relief))!;
        expect(schedule.sittings.flatMap(({ until }) => until)).toContain(wait);
        expect(sitting.jobs.find(({ step }) => step === relief)!.machine).toBeGreaterThan(0);
    });
    it('invents no date: days are counted from the start, dates follow from the one that is given', async () => {
        const plan = await planOf(shop + fillRecipe());
        const words = (start?: number) =>
            runSections(plan, start)
                .map(([, body]) => body)
                .join('\n');
        expect(words()).toContain('day 1, 0:00');
        expect(words()).not.toMatch(/\b20\d\d\b/);
        expect(words(Date.UTC(2026, 10, 26, 8) / 1000)).toContain('Thu 26 Nov 2026, 08:00');
    });
    it('stands in the bench view and behind `make`', async () => {
        const plan = await planOf(shop + fillRecipe());
        expect(makeRunView(plan)).toMatchObject({ ready: plan.schedule.ready, cost: { shop: 's' } });
        const run = makeRunFigures(plan);
        expect(run.hint).toMatch(/^ready after .*, \d+\.\d\d EUR each$/);
        expect(run.hover).toContain('Cost of 2 pieces');
    });
    it('of figures that are none is bounded', async () => {
        const plan = await planOf(
            shop + fillRecipe({ between: 'seal disc with shellac { coats 900000 } wait 1 h' }).replace('make 2', 'make 9999'),
        );
        expect(plan.schedule.works.length).toBeLessThan(100);
        expect(plan.schedule.scaled).toBe(true);
        expect(Number.isFinite(plan.cost!.total)).toBe(true);
    });
});
