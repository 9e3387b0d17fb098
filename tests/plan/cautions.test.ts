import { describe, expect, it } from 'vitest';
import { whatComesFirst } from '../../shared/plan/cautions';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { jobSheet } from '../../shared/sheets/job-sheet';
import { planJson } from '../../shared/sheets/plan-json';
import { stepFacts } from '../../shared/sheets/step-facts';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { makeChecklist } from '../../shared/view/make-checklist';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe, shop } from '../kit/shop';

const body = (steps: string, of = 'ash-10') => `
recipe thing "Thing" { revision 1 make 1 laser shed art flag "flag.svg"
  blank b { of ${of} size 200 x 150 mm grain along width } ${steps} }`;
const thing = (steps: string, stock = '', of?: string) => planOf(`${shop}\n${stock}\n${body(steps, of)}`);
const with_ = (plan: Plan, words: string) => plan.cautions.filter((caution) => caution.includes(words));

describe('the cautions of a plan', () => {
    it('hold those of the laser’s source, and name its own wavelength', async () => {
        const burnt = 'engrave e on b { art flag tone 50 % air off }';
        const co2 = await thing(burnt);
        expect(with_(co2, 'co2: The beam is invisible')).toHaveLength(1);
        expect(with_(co2, '10.6 µm')).toHaveLength(1);
        const near = await planOf(`${shop.replace('beam co2', 'beam blue-diode 455 nm')}${body(burnt)}`);
        expect(with_(near, 'blue-diode: Blue light harms the retina')).toHaveLength(1);
        expect(with_(near, '455 nm')).toHaveLength(1);
        expect(with_(near, '450 nm')).toEqual([]);
        expect(co2.cautions.at(-1)).toBe(whatComesFirst);
    });
    it('of stock stand beside those of its kind', async () => {
        const own = 'resin own { kind slow-epoxy  caution "Keep it off the stairs."  caution "It smells." }';
        const plan = await planOf(fillRecipe().replace('fill hollow with tide-blue', 'fill hollow with own') + own);
        expect(with_(plan, 'own: Keep it off the stairs.')).toHaveLength(1);
        expect(with_(plan, 'own: It smells.')).toHaveLength(1);
        expect(with_(plan, 'own: Uncured epoxy sensitises the skin')).toHaveLength(1);
    });
    it('tell of a laser that runs for long, here and in the whole', async () => {
        const plan = await thing('engrave e on b { rectangle 150 x 120 mm depth 1 mm air off }');
        expect(plan.steps[0]!.times.machine).toBeGreaterThan(1200);
        expect(plan.steps[0]!.cautions!.join()).toMatch(/^The laser runs for [\d a-z]+: somebody stays beside it/);
        expect(plan.cautions[1]).toMatch(/^The laser runs long for each piece: [\d a-z]+ in “Engrave e”/);
        const short = await thing('engrave e on b { rectangle 10 x 10 mm depth 0.5 mm air off }');
        expect(short.steps[0]!.cautions).toBeUndefined();
        expect(with_(short, 'The laser runs long')).toEqual([]);
    });
    it('tell of a cup that holds more than its pot life is meant for', async () => {
        const slab = (stock: string) =>
            thing('engrave e on b { rectangle 190 x 140 mm depth 4 mm } seal b with shellac wait 2 h fill e with big', stock);
        const hot = await slab('resin big { kind slow-epoxy mix 2 : 1 by volume }');
        expect(hot.steps[3]!.cautions!.join()).toContain('So much big gets hot in the cup');
        const litre = await slab('resin big { kind slow-epoxy mix 2 : 1 by volume largest mix 2 kg }');
        expect(with_(litre, 'gets hot in the cup')).toEqual([]);
    });
    it('of a step stand with it: rags, dust of a wood, glue of a sheet', async () => {
        const oil = await thing('finish b with drying-oil');
        expect(oil.steps[0]!.cautions!.join()).toContain('Rags wet with drying-oil catch fire by themselves');
        expect(oil.steps[0]!.cautions!.join()).toContain('closed metal can');
        const teak = 'board teak-8 { wood teak thickness 8 mm }';
        const sanded = await thing('sand b { take 0.1 mm grits 120 } finish b with wax', teak, 'teak-8');
        expect(sanded.steps[0]!.cautions!.join()).toContain('teak: Teak dust');
        expect(sanded.steps[1]!.cautions).toBeUndefined();
        const ply = 'board birch-6 { made of plywood thickness 6 mm }';
        const cut = await thing('engrave e on b { art flag tone 50 % air off }', ply, 'birch-6');
        expect(cut.steps[0]!.cautions!.join()).toContain('birch-6 is made of plywood');
        expect(with_(cut, 'formaldehyde')).toHaveLength(1);
    });
    it('reach the checklist, the job sheet, the bench view and the facts of the step', async () => {
        const plan = await thing('finish b with drying-oil');
        const rags = 'Rags wet with drying-oil';
        expect(stepFacts(plan.steps[0]!).find(({ label }) => label === 'caution')!.value).toContain(rags);
        const view = makeBenchView(plan, [], { uri: '', textVersion: 1, recipes: [] }, new Memo());
        expect(view.steps[0]!.facts.find(({ label }) => label === 'caution')!.value).toContain(rags);
        expect(makeChecklist(plan).items[0]!.tooltip).toContain(rags);
        expect(jobSheet(plan, []).text.split(rags)).toHaveLength(3);
        expect(JSON.stringify(planJson(plan, [])).split(rags)).toHaveLength(3);
    });
    it('are none for a recipe that does nothing', async () => {
        expect((await planOf(`${shop}recipe idle "Idle" { revision 1 }`)).cautions).toEqual([]);
        expect((await planOf(inlayRecipe())).cautions.join()).toContain('Bare foil');
    });
});
