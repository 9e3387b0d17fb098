import { describe, expect, it } from 'vitest';
import { area } from '../../shared/geometry/measure';
import type { Plan } from '../../shared/plan/plan';
import { planJson } from '../../shared/sheets/plan-json';
import { planOf } from '../kit/plan-of';
import { coupon, inlayRecipe, shop } from '../kit/shop';

const recipe = (body: string, blank = 'blank b { of ash-10 size 100 x 100 mm grain along width }'): string =>
    `${shop}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n art flag "flag.svg"\n ${blank}\n ${body}\n}`;

const faceAt = (plan: Plan, step: number, blank = 'b') => plan.faces[step]!.find((face) => face.blank === blank)!;
const last = (plan: Plan, blank = 'b') => faceAt(plan, plan.steps.length, blank);

describe('the face of each blank in a plan', () => {
    it('is the freed part alone once a cut around the work closes, and so are its coats', async () => {
        const plan = await planOf(
            recipe(
                'engrave e on b { art flag depth 0.5 mm air off }\n cut rim on b { circle 80 mm air on }\n finish b with shellac-coat { coats 2 }',
            ),
        );
        expect(area(faceAt(plan, 1).body.region)).toBeCloseTo(10_000, 6);
        // A circle of 80 mm, drawn as a polygon that is nowhere off by more than a hundredth.
        expect(area(last(plan).body.region)).toBeGreaterThan(5026.5 - 3);
        expect(area(last(plan).body.region)).toBeLessThan(5026.6);
        const whole = await planOf(
            recipe('engrave e on b { art flag depth 0.5 mm air off }\n finish b with shellac-coat { coats 2 }'),
        );
        const amount = (of: Plan) => of.supplies.find(({ kind }) => kind === 'finish')!.amount;
        expect(amount(plan) / amount(whole)).toBeCloseTo(area(last(plan).body.region) / 10_000, 9);
    });
    it('keeps the sheet while tabs hold the part, until they are broken', async () => {
        const body =
            'engrave e on b { art flag depth 0.5 mm air off }\n cut rim on b { circle 80 mm tabs 3 air on }\n do "break the tabs" for 5 min';
        const plan = await planOf(recipe(body));
        expect(faceAt(plan, 2).freed).toBe(false);
        expect(last(plan).freed).toBe(true);
    });
    it('frees every part of a cut over which the work is spread, and loses the waste of holes with the tabs', async () => {
        const many = (how: string) =>
            planOf(
                recipe(
                    `engrave dots on b { circle 4 mm at 50, 50 mm repeat 4 x 4 every 24 x 24 mm tone 60 % }
                    cut eyes on b { circle 2 mm at 44, 50 mm repeat 4 x 4 every 24 x 24 mm air on ${how} }
                    cut tags on b { circle 20 mm at 50, 50 mm repeat 4 x 4 every 24 x 24 mm air on ${how} }
                    do "break them out" for 5 min`,
                ),
            );
        const one = (plan: Plan) => area(last(plan).body.region) / (Math.PI * (10 ** 2 - 1 ** 2));
        // Circles are polygons, the eyes coarser ones.
        expect(one(await many(''))).toBeCloseTo(16, 1);
        const held = await many('tabs 2');
        expect(area(faceAt(held, 3).body.region)).toBeCloseTo(10_000, 6);
        expect(one(held)).toBeCloseTo(16, 1);
    });
    it('keeps what a backing holds until it is peeled', async () => {
        const plan = await planOf(
            recipe(
                'engrave e on b { art flag depth 0.5 mm air off }\n cut hole on b { circle 6 mm at 10, 10 mm air on }\n cut rim on b { circle 90 mm air on }\n peel b',
                'blank b { of ash-10 size 100 x 100 mm grain along width backing tape }',
            ),
        );
        expect(faceAt(plan, 2).fell).toBeDefined();
        expect(area(faceAt(plan, 3).body.region)).toBeCloseTo(10_000, 6);
        expect(area(last(plan).body.region) / (Math.PI * 45 ** 2)).toBeCloseTo(1, 2);
    });
    it('loses a hole, and keeps the sheet around it', async () => {
        const plan = await planOf(
            recipe('engrave e on b { art flag depth 0.5 mm air off }\n cut hole on b { circle 10 mm at 85, 85 mm air on }'),
        );
        expect(last(plan).freed).toBe(false);
        expect(area(last(plan).body.region)).toBeCloseTo(10_000 - Math.PI * 25, 0);
    });
    it('holds veneer, glue and board below each other, and the clearance open around them', async () => {
        const plan = await planOf(inlayRecipe());
        const laid = last(plan, 'tray').cells.find(({ column }) => column.layers.length > 1)!;
        expect(laid.column.layers.map(({ kind, name }) => `${kind} ${name}`)).toEqual([
            'wood maple-06',
            'glue wood-glue',
            'wood walnut-12',
        ]);
        // 0.55 deep, 0.06 of it wood glue, 0.1 sanded off the face: 0.39 of veneer.
        expect(laid.column.layers[0]!.down.value - laid.column.top.value).toBeCloseTo(0.39, 9);
        expect(area(laid.region)).toBeCloseTo(area(plan.steps[2]!.inlay!.fits), 6);
    });
    it('says in the plan’s JSON how thin the walls are, and where', async () => {
        const plan = await planOf(
            recipe(
                'engrave e on b { rectangle 20 x 20 mm at 30, 50 mm depth 0.5 mm air off }\n engrave f on b { rectangle 20 x 20 mm at 53, 50 mm depth 0.5 mm air off }\n cut rim on b { rectangle 60 x 40 mm at 45, 50 mm air on }',
            ),
        );
        const json = planJson(plan, []) as {
            steps: { wall?: object; floor?: { value: number } }[];
            blanks: { left: { wall: object } }[];
        };
        // Pockets from 20 to 40 and from 43 to 63 mm; the cut runs from 15 to 75: 5 mm and more beside them is no wall.
        expect(json.steps[1]).toMatchObject({ wall: { between: 'f', and: 'e', kind: 'pocket' }, floor: { value: 9.5 } });
        // As drawn 3 mm; each rim lies 0.04 mm beyond its edge.
        expect((json.steps[1]!.wall as { width: number }).width).toBeCloseTo(2.92, 2);
        expect(json.blanks[0]!.left.wall).toEqual(json.steps[1]!.wall);
        expect(json.steps[0]).not.toHaveProperty('wall');
    });
    it('says in the plan’s JSON what is left of it', async () => {
        const plan = await planOf(
            recipe(
                'engrave e on b { art flag depth 0.5 mm air off }\n engrave f on b { rectangle 50 x 50 mm depth 0.4 mm air off }\n cut rim on b { circle 80 mm air on }',
            ),
        );
        const json = planJson(plan, []) as {
            blanks: { left: { area: number; floor: { value: number }; parts: unknown[] } }[];
            steps: { floor?: { value: number } }[];
        };
        expect(json.blanks[0]!.left.floor.value).toBeCloseTo(10 - 0.9, 9);
        expect(json.blanks[0]!.left.parts).toHaveLength(1);
        expect(json.steps.map(({ floor }) => floor?.value.toFixed(1))).toEqual(['9.5', '9.1', undefined]);
    });
    it('does not throw for art that is tangled, a blank without a size, or a step without a blank', async () => {
        const plan = await planOf(recipe('engrave e on b { art flag depth 0.5 mm air off }', 'blank b { of ash-10 }'));
        expect(plan.faces.at(-1)).toMatchObject([{ blank: 'b', unsized: true, cells: [{ column: { digs: [{ step: 0 }] } }] }]);
        expect((planJson(plan, []) as { blanks: { left: unknown }[] }).blanks[0]!.left).toBeNull();
        await expect(planOf(recipe('engrave e on nowhere { art flag depth 0.5 mm air off }'))).resolves.toBeDefined();
    });
});
