import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { planPress } from '../../shared/plan/plan-press';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { stepFacts } from '../../shared/sheets/step-facts';
import { makeChecklist } from '../../shared/view/make-checklist';
import { planOf } from '../kit/plan-of';
import { coupon, inlayRecipe } from '../kit/shop';

const pocket = (depth: string, more = '') => inlayRecipe({ pocket: `art flag depth ${depth} outline 1 air off ${more}` });
const engraved = async (depth: string, more = '') => (await planOf(pocket(depth, more))).steps[0]!;

describe('a pocket that goes on from a measured depth', () => {
    it('is planned, timed and written for the passes that are left, and is as deep as was asked for', async () => {
        const whole = (await engraved('0.55 mm')).laser!;
        const passes = whole.settings!.passes;
        expect(passes).toBeGreaterThan(1);
        const half = whole.settings!.gives.value * (1 - 1 / passes);
        const rest = (await engraved(`0.55 mm reached ${half.toFixed(3)} mm after ${passes - 1}`)).laser!;
        expect(rest.settings!.passes).toBeLessThan(passes);
        expect(rest.depth!.value).toBeCloseTo(0.55, 2);
        expect(rest.depth!.high - rest.depth!.low).toBeLessThan(0.7 * (whole.depth!.high - whole.depth!.low));
        expect(rest.machine!).toBeLessThan(0.8 * whole.machine!);
        const plan = await planOf(pocket(`0.55 mm reached ${half.toFixed(3)} mm after ${passes - 1}`));
        const { files } = buildSheets(plan, [], new Memo());
        const program = files.find(({ path, text }) => path.endsWith('.ngc') && text.includes('pocket'))!;
        expect(program.text).toContain(rest.settings!.passes === 1 ? '1 pass' : `${rest.settings!.passes} passes`);
        expect(program.text).not.toContain(`${passes} passes`);
    });
    it('keeps the walls, the fit and the press of a pocket of that depth', async () => {
        const [one, other] = [await planOf(pocket('0.55 mm')), await planOf(pocket('0.55 mm reached 0.30 mm after 1'))];
        const [a, b] = [one, other].map((plan) => plan.steps[0]!.laser!);
        expect(b!.wall!.depth).toBeCloseTo(a!.wall!.depth, 2);
        expect(b!.growth).toBeCloseTo(a!.growth, 2);
        const inlayAt = one.steps.findIndex(({ inlay }) => inlay !== undefined);
        const [pressed, too] = [one, other].map((plan) => planPress(plan, inlayAt, new Memo())!);
        expect(too!.insertion).toBeCloseTo(pressed!.insertion, 2);
    });
    it('digs harder what came out too shallow, and less what came out too deep', async () => {
        const doseOf = async (reached: string) => {
            const { power, speed, pitch } = (await engraved(`0.55 mm reached ${reached} mm after 2`, 'passes 3')).laser!
                .settings!;
            return power / (speed * pitch);
        };
        const [shallow, deep] = [await doseOf('0.25'), await doseOf('0.40')];
        expect(shallow).toBeGreaterThan(1.2 * deep);
    });
    it('goes on through a veneer, as surely as was asked, with less to spare than one that was not measured', async () => {
        const relief = async (more: string) => {
            const text = inlayRecipe({ relief: `art flag inverse within grown 6 mm mirror depth through ${more} air off` });
            const maple = text.replace(
                /coupon walnut-12[^}]*}/,
                coupon(
                    'maple-06',
                    'shed',
                    `burn 60 % at 300 mm/s x 2 gives 0.47 mm
                     burn 60 % at 300 mm/s x 3 gives 0.70 mm
                     burn 40 % at 400 mm/s x 3 gives 0.30 mm
                     burn 80 % at 300 mm/s x 3 gives 1.00 mm`,
                ),
            );
            const plan = await planOf(maple);
            return { plan, step: plan.steps.find(({ step }) => step.kind === 'engrave' && step.name === 'relief')! };
        };
        const { step: whole } = await relief('sure 99 %');
        const passes = whole.laser!.settings!.passes;
        expect(passes).toBeGreaterThan(1);
        const { step: rest, plan } = await relief('sure 99 % reached 0.50 mm after 2');
        expect(rest.laser).toMatchObject({ through: true, depth: { value: 0.6 }, goesOn: { reached: 0.5, passes: 2 } });
        expect(rest.laser!.goesOn!.left).toBeCloseTo(0.12, 9); // to the thick end
        console.log(
            JSON.stringify([rest.laser!.breakthrough, whole.laser!.breakthrough, rest.laser!.settings, whole.laser!.settings]),
        );
        expect(rest.laser!.breakthrough).toMatchObject({ asked: 0.99, certain: true, thickest: 0.62 });
        expect(rest.laser!.breakthrough!.spare).toBeLessThan(0.6 * whole.laser!.breakthrough!.spare);
        expect(rest.laser!.breakthrough!.surely).toBeGreaterThan(0.618);
        expect(rest.laser!.wall!.depth).toBeGreaterThan(0.6);
        const so = stepFacts(rest).find(({ label }) => label === 'so far')!.value;
        expect(so).toBe('0.5 mm after 2 passes; the settings are for the 0.12 mm that are left');
        const item = makeChecklist(plan).items.find(({ label }) => label.includes('relief'))!;
        expect(item.tooltip).toContain('so far: 0.5 mm');
        expect(item.burnt!.words).toBe('of maple-06');
        const more = 'sure 99 % reached 0.70 mm after 3';
        expect((await relief(more)).step.laser!.settings).toBeUndefined();
    });
    it('can be measured from the checklist, where its depth stands, while it has passes left to burn', async () => {
        const of = async (text: string) => makeChecklist(await planOf(text)).items[0]!.measureAfter;
        const text = pocket('0.55 mm');
        const { where, passes, unit } = (await of(text))!;
        expect(text.slice(where.offset, where.offset + where.length)).toBe('0.55 mm');
        expect(passes).toBe((await engraved('0.55 mm')).laser!.settings!.passes);
        expect(unit).toBe('mm');
        expect(await of(pocket('0.55 mm', 'passes 1'))).toBeUndefined();
        expect(await of(pocket('0.55 mm reached 0.30 mm after 1'))).toBeUndefined();
    });
    it('says how far it is on sheet and checklist, and has nothing wrong written into the run', async () => {
        const plan = await planOf(pocket('0.55 mm reached 0.30 mm after 1'));
        const so = stepFacts(plan.steps[0]!).find(({ label }) => label === 'so far')!.value;
        expect(so).toBe('0.3 mm after one pass; the settings are for the 0.25 mm that are left');
        const [item] = makeChecklist(plan).items;
        expect(item!.tooltip).toContain('so far: 0.3 mm');
        expect(item!.burnt!.words).toMatch(/^of walnut-12 planned 0\.55/);
    });
});
