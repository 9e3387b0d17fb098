import { describe, expect, it } from 'vitest';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe } from '../kit/shop';

const hour = 3600;

describe('schedule of a recipe', () => {
    it('one piece takes what its steps take, one after the other', async () => {
        const plan = await planOf(inlayRecipe());
        const laid = plan.schedule;
        // Nothing can overlap but the veneer's own cutting, and there is one pair of hands.
        expect(laid.ready).toBeCloseTo(plan.totals!.machine + plan.totals!.attended + plan.totals!.waiting, 6);
        expect(laid.attended).toBeCloseTo(plan.totals!.machine + plan.totals!.attended, 6);
    });
    it('six pieces wait side by side', async () => {
        const one = (await planOf(fillRecipe())).schedule;
        const six = (await planOf(fillRecipe().replace('make 2', 'make 6'))).schedule;
        const plan = await planOf(fillRecipe());
        expect(six.ready).toBeLessThan(one.ready + 6 * (plan.totals!.machine + plan.totals!.attended));
        expect(six.ready).toBeLessThan(3 * one.ready);
        expect(six.idle).toBeGreaterThan(20 * hour);
    });
    it('cuts the veneer while the board waits', async () => {
        const waits = inlayRecipe().replace('engrave relief', 'seal tray with wood-glue-wash wait 10 h engrave relief');
        const plan = await planOf(waits);
        const laid = plan.schedule;
        const relief = plan.steps.findIndex(({ step }) => step.kind === 'engrave' && step.name === 'relief');
        const wait = plan.steps.findIndex(({ step }) => step.kind === 'wait');
        expect(laid.spans[relief]!.start).toBeLessThan(laid.spans[wait]!.ready);
        const inlay = plan.steps.findIndex(({ step }) => step.kind === 'inlay');
        expect(laid.spans[inlay]!.start).toBeGreaterThanOrEqual(laid.spans[wait]!.ready);
    });
    it('the wait for the glue holds the peeling back', async () => {
        const plan = await planOf(inlayRecipe());
        const laid = plan.schedule;
        const at = (kind: string) => laid.spans[plan.steps.findIndex(({ step }) => step.kind === kind)]!;
        expect(at('peel').start).toBeGreaterThanOrEqual(at('inlay').end + 12 * hour);
    });
    it('keeps to a working day', async () => {
        const day = 'shop s { currency EUR  hourly 9  workday 8 h }';
        const laid = (await planOf(day + fillRecipe().replace('make 2', 'make 12'))).schedule;
        for (const turn of laid.turns) if (turn.end > turn.start) expect(turn.start % (24 * hour)).toBeLessThan(8 * hour);
    });
});

describe('sheets to cut', () => {
    const sized = (sheet: string) =>
        fillRecipe().replace('board ash-10 {', `board ash-10 { sheet ${sheet}`).replace('make 2', 'make 7');
    it('counts sheets, with the width of the saw', async () => {
        const [cutting] = (await planOf(sized('1000 x 210 mm'))).cuttings;
        // Blanks of 100 by 100: nine in a row with 3 mm between them, two rows.
        expect(cutting).toMatchObject({ sheet: { name: 'ash-10' }, yielded: { sheets: 1, tooLarge: [] } });
    });
    it('says what does not fit', async () => {
        expect((await planOf(sized('1000 x 90 mm'))).cuttings[0]!.yielded.tooLarge).toEqual(['disc']);
    });
    it('has nothing to say of a sheet without a size', async () => expect((await planOf(fillRecipe())).cuttings).toEqual([]));
});
