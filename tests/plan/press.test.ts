import { describe, expect, it } from 'vitest';
import { intersect } from '../../shared/geometry/boolean';
import { area } from '../../shared/geometry/measure';
import { Memo } from '../../shared/plan/memo';
import { planPress } from '../../shared/plan/plan-press';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe } from '../kit/shop';

const pressed = async (text: string) => {
    const plan = await planOf(text);
    const index = plan.steps.findIndex(({ step }) => step.kind === 'inlay' || step.kind === 'fill');
    return { plan, inlay: plan.steps[index]!.inlay, press: planPress(plan, index, new Memo()) };
};

describe('the press of a recipe', () => {
    it('reaches the glue with enough clearance', async () => {
        const { inlay, press } = await pressed(inlayRecipe());
        expect(press).toMatchObject({ bottoms: true, stops: [] });
        expect(press!.insertion).toBeCloseTo(inlay!.pocketLaser.settings!.gives.value - inlay!.film.value, 2);
        expect(inlay!.fit!.bottoms).toBe(true);
        // Straight walls made 0.03 mm of it on the sample tray, where the press leaves 0.045 mm.
        expect(Math.abs(press!.open / inlay!.pocketLaser.perimeter - inlay!.fit!.seam)).toBeLessThan(0.005);
    });
    it('is stopped by the walls without, as the fit says too', async () => {
        const { inlay, press } = await pressed(inlayRecipe({ inlay: 'clearance 0.02 mm glue wood-glue' }));
        expect(press!.bottoms).toBe(false);
        expect(inlay!.fit!.bottoms).toBe(false);
        expect(press!.stops.length).toBeGreaterThan(0);
    });
    it('lies on the board when the halves do not match', async () => {
        const { press } = await pressed(inlayRecipe({ relief: 'art flag inverse within grown 6 mm depth through air off' }));
        expect(press!.insertion).toBeLessThan(0.05);
    });
    it('has no answer for a fill, or without a spot', async () => {
        expect((await pressed(fillRecipe())).press).toBeUndefined();
        expect((await pressed(inlayRecipe().replace('spot 0.15 mm', ''))).press).toBeUndefined();
    });
    it('lies on the highest floor of its pocket, as the stack says, over the room of a deeper hole', async () => {
        const head = 'engrave well on tray { rectangle 6 x 4 mm at 96, 68 mm depth 0.3 mm air off }';
        const [plain, holed] = [await pressed(inlayRecipe()), await pressed(inlayRecipe({ head }))];
        const face = holed.plan.faces[holed.plan.steps.findIndex(({ step }) => step.kind === 'inlay')]!.find(
            ({ blank }) => blank === 'tray',
        )!;
        const well = face.cells.filter(({ column }) => column.digs.length === 2);
        expect(well).toHaveLength(1);
        expect(holed.inlay!.stack).toEqual(plain.inlay!.stack);
        expect(holed.press!.insertion).toBeCloseTo(plain.press!.insertion, 3);
        // 0.3 mm more under all of the veneer that lies over it; its walls lean.
        const room = area(intersect(well[0]!.region, holed.inlay!.turned)) * 0.3;
        expect(room).toBeGreaterThan(5);
        expect((holed.press!.gapVolume - plain.press!.gapVolume) / room).toBeGreaterThan(0.93);
        expect((holed.press!.gapVolume - plain.press!.gapVolume) / room).toBeLessThan(1.07);
    });
    it('goes in less where the face was sanded after the pocket was burnt, as the stack says', async () => {
        const [plain, sanded] = [
            await pressed(inlayRecipe()),
            await pressed(inlayRecipe().replace('inlay relief', 'sand tray { take 0.1 mm grits 120 }\n inlay relief')),
        ];
        expect(plain.press!.insertion - sanded.press!.insertion).toBeCloseTo(0.1, 6);
        const proud = ({ inlay }: typeof plain) => inlay!.stack!.proud.likely.value;
        expect(proud(sanded) - proud(plain)).toBeCloseTo(0.1, 9);
    });
});

describe('a veneer half that more than one burn has made', () => {
    const half = (depth: string, name = 'relief') =>
        `engrave ${name} on bird { art flag inverse within grown 6 mm mirror depth ${depth} air off }`;
    const pieced = (burns: string) => inlayRecipe().replace(half('through'), burns);
    /** A second burn along the same edge: that of the half stands back for its clearance and the beam's width. */
    const again = async (depth: string) => {
        const { edge } = (await pressed(inlayRecipe())).inlay!.reliefLaser;
        return half(depth, 'again').replace('air off', `offset ${edge} mm air off`);
    };
    const onTray = async (burns: string) => {
        const { plan, inlay, press } = await pressed(pieced(burns));
        const after = plan.faces[plan.steps.findIndex(({ step }) => step.kind === 'inlay') + 1]!;
        const cells = after.find(({ blank }) => blank === 'tray')!.cells;
        const laid = cells.filter(({ column }) => column.layers.some(({ kind }) => kind === 'glue'));
        return { inlay: inlay!, press: press!, laid };
    };

    it('that leaves a skin is held up by it: press, fit, stack and column say as high', async () => {
        const { inlay, press, laid } = await onTray(half('0.4 mm'));
        expect(inlay.half.rise!.value).toBeCloseTo(0.4, 9);
        expect(press.insertion).toBeCloseTo(0.4, 2);
        expect(inlay.fit!.insertion).toBeCloseTo(0.4, 2);
        expect(inlay.stack!.proud.likely.value).toBeCloseTo(0.2, 9);
        expect(-laid[0]!.column.top.value).toBeCloseTo(0.2, 2);
    });
    it('in two burns that together go through has no skin', async () => {
        const { inlay, press } = await onTray(`${half('0.3 mm')}\n${await again('0.35 mm')}`);
        expect(inlay.half.rise).toBeUndefined();
        expect(inlay.fit!.bottoms).toBe(true);
        expect(press.bottoms).toBe(true);
    });
    it('in two burns that together do not go through rises as far as both are deep', async () => {
        const { inlay, press } = await onTray(`${half('0.2 mm')}\n${await again('0.2 mm')}`);
        expect(inlay.half.rise!.value).toBeCloseTo(0.4, 9);
        expect(press.insertion).toBeCloseTo(0.4, 2);
        expect(inlay.fit!.insertion).toBeCloseTo(0.4, 2);
    });
    it('is as thick as what was left before it was burnt', async () => {
        const thin = 'engrave thin on bird { rectangle 78 x 68 mm depth 0.25 mm air off }';
        const { inlay, press, laid } = await onTray(`${thin}\n${half('through')}`);
        expect(inlay.veneer!.value).toBeCloseTo(0.35, 9);
        // 0.55 deep, 0.06 of glue.
        expect(inlay.stack!.proud.likely.value).toBeCloseTo(0.35 - 0.49, 9);
        expect(press.insertion).toBeCloseTo(0.49, 2);
        expect(laid.map(({ column }) => column.top.value)).toEqual([expect.closeTo(0.14, 9)]);
    });
    it('hangs where the walls stop it, in the column too', async () => {
        const { plan, inlay } = await pressed(inlayRecipe({ inlay: 'clearance 0.02 mm glue wood-glue' }));
        const after = plan.faces[plan.steps.findIndex(({ step }) => step.kind === 'inlay') + 1]!;
        const [laid] = after
            .find(({ blank }) => blank === 'tray')!
            .cells.filter(({ column }) => column.layers.some(({ kind }) => kind === 'glue'));
        expect(inlay!.fit!.bottoms).toBe(false);
        expect(laid!.column.top.value).toBeCloseTo(inlay!.fit!.insertion - 0.6, 9);
        expect(laid!.column.layers.map(({ kind }) => kind)).toEqual(['foil', 'wood', 'glue', 'air', 'wood']);
    });
    it('has a hole where it had been burnt through before', async () => {
        const hole = 'engrave hole on bird { rectangle 6 x 6 mm at 43, 29 mm depth through air off }';
        const { laid } = await onTray(`${hole}\n${half('through')}`);
        const open = laid.filter(({ column }) => column.layers[0]!.kind === 'glue');
        expect(open.map(({ column }) => column.layers.map(({ kind }) => kind))).toEqual([['glue', 'wood']]);
        expect(area(open[0]!.region)).toBeGreaterThan(30);
    });
    it('lies hollow where its side that goes down was burnt before', async () => {
        const vein = 'engrave vein on bird { rectangle 6 x 6 mm at 43, 29 mm depth 0.25 mm air off }';
        const [plain, hollow] = [await onTray(half('through')), await onTray(`${vein}\n${half('through')}`)];
        const under = hollow.laid.filter(({ column }) => column.layers.some(({ kind }) => kind === 'air'));
        expect(under.map(({ column }) => column.layers.map(({ kind }) => kind))).toEqual([
            ['foil', 'wood', 'air', 'glue', 'wood'],
        ]);
        const room = area(under[0]!.region) * 0.25;
        expect(room).toBeGreaterThan(8);
        expect(hollow.inlay.stack).toEqual(plain.inlay.stack);
        expect(hollow.press.insertion).toBeCloseTo(plain.press.insertion, 3);
        expect((hollow.press.gapVolume - plain.press.gapVolume) / room).toBeGreaterThan(0.93);
        expect((hollow.press.gapVolume - plain.press.gapVolume) / room).toBeLessThan(1.07);
    });
});
