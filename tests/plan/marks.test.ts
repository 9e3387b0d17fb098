import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../shared/geometry/boolean';
import { area, isEmpty } from '../../shared/geometry/measure';
import { grow } from '../../shared/geometry/offset';
import { rectangle } from '../../shared/geometry/shapes';
import { mirror, translate } from '../../shared/geometry/transform';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { turningOf } from '../../shared/plan/plan-inlay';
import { setUps } from '../../shared/plan/set-ups';
import { planJson } from '../../shared/sheets/plan-json';
import { setUpRs274 } from '../../shared/sheets/setup-rs274';
import { setUpSvg } from '../../shared/sheets/setup-svg';
import { stepFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';

const inlay = 'clearance 0.15 mm glue wood-glue marks 3';
const small = (width: number, height: number) =>
    `blank tray { of walnut-12 size 200 x 150 mm grain along width } blank bird { of maple-06 size ${width} x ${height} mm backing foil }`;
const marksOf = (plan: Plan) => plan.steps.find((step) => step.inlay !== undefined)!.inlay!;

describe('the marks of an inlay', () => {
    it('are the same discs on both halves, turned over', async () => {
        const plan = marksOf(await planOf(inlayRecipe({ inlay })));
        const { axis, x, y } = turningOf(plan.reliefLaser, plan.pocketLaser);
        const over = translate(mirror(plan.marks!.relief, axis), x, y);
        expect(plan.marks).toMatchObject({ wanted: 3, placed: 3 });
        expect(area(subtract(over, plan.marks!.pocket)) + area(subtract(plan.marks!.pocket, over))).toBeLessThan(0.01);
        expect(plan.marks!.asymmetry).toBeGreaterThan(1);
    });
    it('stand clear of boundary, pocket and edges, on both blanks', async () => {
        // Placed off the middle, so that only the turned-over half limits them on one side.
        const pocket = 'art flag at 40, 40 mm depth 0.55 mm air off';
        const { marks, reliefLaser, pocketLaser } = marksOf(await planOf(inlayRecipe({ inlay, pocket })));
        const clear = 1.9;
        expect(marks!.placed).toBe(3);
        for (const boundary of reliefLaser.placed.map((placed) => mirror(placed.boundary!, reliefLaser.mirrorAxis!))) {
            expect(isEmpty(intersect(grow(boundary, clear), marks!.relief))).toBe(true);
        }
        expect(isEmpty(intersect(grow(pocketLaser.region, clear), marks!.pocket))).toBe(true);
        expect(isEmpty(subtract(marks!.relief, rectangle(clear, clear, 80 - 2 * clear, 70 - 2 * clear)))).toBe(true);
        expect(isEmpty(subtract(marks!.pocket, rectangle(clear, clear, 200 - 2 * clear, 150 - 2 * clear)))).toBe(true);
    });
    it('are none on a blank that the boundary fills', async () => {
        const relief = 'art flag inverse within rectangle 44 x 40 mm mirror depth through air off';
        const plan = await planOf(inlayRecipe({ inlay, relief, blanks: small(46, 42) }));
        expect(marksOf(plan).marks).toMatchObject({ wanted: 3, placed: 0 });
        expect(marksOf(plan).reliefLaser.marks).toBeUndefined();
    });
    it('go through the veneer with its settings, and are a light tone on the board', async () => {
        const plan = await planOf(inlayRecipe({ inlay }));
        const without = await planOf(inlayRecipe());
        const { reliefLaser, pocketLaser } = marksOf(plan);
        expect(reliefLaser.marks).toMatchObject([{ settings: reliefLaser.settings }]);
        expect(reliefLaser.marks![0]!.tone).toBeUndefined();
        expect(pocketLaser.marks).toMatchObject([{ tone: 0.25 }]);
        expect(pocketLaser.marks![0]!.settings!.gives.value).toBeLessThan(0.02);
        expect(plan.totals!.machine).toBeGreaterThan(without.totals!.machine);
        expect(pocketLaser).toBe(plan.steps[pocketLaser.step.index]!.laser);
    });
    it('show on both pieces, take no veneer in, and go with the sanding', async () => {
        const plan = await planOf(inlayRecipe({ inlay }));
        const face = (moment: number, blank: string) => plan.faces[moment]!.find((one) => one.blank === blank)!;
        expect(face(1, 'tray').marks).toMatchObject([{ through: false }]);
        expect(face(2, 'bird').marks).toMatchObject([{ through: true }]);
        const [mark] = face(3, 'tray').marks;
        const laid = face(3, 'tray').cells.filter(({ column }) => column.layers.length > 1);
        expect(laid.flatMap(({ region }) => intersect(region, mark!.region).rings)).toEqual([]);
        expect(face(plan.steps.length, 'tray').marks).toEqual([]);
    });
    it('are in every file', async () => {
        const plan = await planOf(inlayRecipe({ inlay }));
        for (const [index, setUp] of setUps(plan).entries()) {
            const svg = setUpSvg(plan, setUp, new Memo()).text;
            expect(svg).toContain(`<g id="${index === 0 ? 'pocket' : 'relief'}-marks-3">`);
            const file = setUpRs274(plan, setUp, new Memo());
            const before = setUpRs274(
                plan,
                { ...setUp, lasers: setUp.lasers.map(({ marks: _, ...laser }) => laser) },
                new Memo(),
            );
            if ('problem' in file || 'problem' in before) throw new Error('no machine file');
            expect(file.text).toContain('marks of');
            expect(file.text.length).toBeGreaterThan(before.text.length + 500);
        }
        expect(stepFacts(plan.steps[2]!).find(({ label }) => label === 'marks')!.value).toContain('mark on mark');
        expect(JSON.stringify(planJson(plan, []))).toContain('"marks":{"wanted":3,"placed":3');
    });
    it('stand on wood that no earlier cut has taken away, nor in a hole', async () => {
        const cut = 'cut rim on tray { rectangle 68 x 60 mm at 100, 75 mm power 90 % speed 8 mm/s air on }';
        const hole = 'cut hole on tray { rectangle 20 x 60 mm at 130, 75 mm power 90 % speed 8 mm/s air on }';
        const text = inlayRecipe({ inlay });
        const before = marksOf(await planOf(text.replace('inlay relief', `${cut} ${hole} inlay relief`))).marks!;
        expect(before.placed).toBe(3);
        const inside = grow(rectangle(66, 45, 68, 60), -1.9);
        expect(isEmpty(subtract(before.pocket, inside))).toBe(true);
        expect(isEmpty(intersect(before.pocket, grow(rectangle(120, 45, 20, 60), 1.9)))).toBe(true);
        // Afterwards it is of no matter to them: what they stand on is still there.
        const plain = marksOf(await planOf(text)).marks!;
        const after = marksOf(await planOf(text.replace('peel bird', `peel bird ${cut} ${hole}`))).marks!;
        expect(after.pocket).toEqual(plain.pocket);
        expect(before.pocket).not.toEqual(plain.pocket);
    });
    it('of a second inlay keep clear of the first one’s', async () => {
        const text = inlayRecipe({ inlay }).replace(
            'wait 12 h',
            `engrave other on tray { art diamond at 40, 40 mm depth 0.55 mm air off }
             engrave leaf on bird2 { art diamond inverse within grown 6 mm mirror depth through air off }
             inlay leaf into other { clearance 0.15 mm glue wood-glue marks 3 } wait 12 h`,
        );
        const plan = await planOf(
            text.replace('blank bird {', 'blank bird2 { of maple-06 size 70 x 70 mm backing foil } blank bird {'),
        );
        const [first, second] = plan.steps.flatMap((step) => step.inlay ?? []);
        expect(second!.marks!.placed).toBe(3);
        expect(isEmpty(intersect(second!.marks!.pocket, grow(first!.marks!.pocket, 1)))).toBe(true);
        expect(isEmpty(intersect(first!.marks!.pocket, second!.pocketLaser.region))).toBe(true);
    });
});
