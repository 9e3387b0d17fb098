import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../shared/plan/plan';
import { jobSheet } from '../../shared/sheets/job-sheet';
import { planJson } from '../../shared/sheets/plan-json';
import { stepFacts } from '../../shared/sheets/step-facts';
import { makeChecklist } from '../../shared/view/make-checklist';
import { planOf } from '../kit/plan-of';
import { fillRecipe, inlayRecipe, shop } from '../kit/shop';

const advice = ({ steps }: Plan): string[] => steps.flatMap((step) => step.advice ?? []);
const grey = encode({ width: 8, height: 8, channels: 1, data: Uint8Array.from({ length: 64 }, (_, i) => 4 * i) });
const of = async (text: string): Promise<string> => advice(await planOf(text, { 'grey.png': grey })).join('\n');

describe('advice, which is no finding', () => {
    it('soot goes before a sealer, unless a step brushes it out or the pour lies on a sealer', async () => {
        expect(await of(fillRecipe())).toBe(
            'brush the soot out of hollow first: what goes on it holds no better than the soot does',
        );
        expect(await of(fillRecipe({ between: 'do "brush out the char" for 3 min  seal disc with shellac wait 2 h' }))).toBe('');
        expect(await of(fillRecipe({ between: '' }))).toContain('brush the soot out of hollow');
    });
    it('a joint of wood glue that is sanded before its water is out', async () => {
        const wet =
            'wood-glue still holds water: sanded flush now, its joints sink a little as they dry; after 1 d they stay flat';
        expect(await of(inlayRecipe())).toContain(wet);
        expect(await of(inlayRecipe().replace('wait 12 h', 'wait 24 h'))).not.toContain('holds water');
        expect(await of(inlayRecipe().replace('glue wood-glue', 'glue epoxy-glue'))).not.toContain('holds water');
    });
    it('tape under a pour that is hard, not under one that still gives', async () => {
        const masked = (wait: string) =>
            fillRecipe().replace('engrave hollow', 'mask disc engrave hollow').replace('wait 24 h', `wait ${wait} peel disc`);
        expect(await of(masked('24 h'))).toContain('what ran over the tape is hard by now: cut along its edge before you pull');
        expect(await of(masked('4 h'))).not.toContain('over the tape');
        expect(await of(fillRecipe())).not.toContain('over the tape');
    });
    it('tape that is still on when the face is sanded', async () => {
        const masked = (peel: string) =>
            fillRecipe().replace('engrave hollow', 'mask disc engrave hollow').replace('wait 24 h', `wait 24 h ${peel}`);
        expect(await of(masked(''))).toContain('the tape is still on disc: peel it first, since it clogs the paper');
        expect(await of(masked('peel disc'))).not.toContain('still on disc');
    });
    it('a tone under the first coat that wets it, and greys on a wood of uneven rings', async () => {
        const toned = (coats: string, board = 'maple-8', wood = 'sugar-maple', picture = '') => `${shop}
board ${board} { wood ${wood} thickness 8 mm }
recipe thing { laser shed art flag "flag.svg" ${picture} blank b { of ${board} size 100 x 80 mm grain along width }
  engrave e on b { art flag tone 50 % } ${coats} }`;
        const dark = await of(toned('finish b with drying-oil wait 24 h finish b with drying-oil'));
        expect(dark.match(/bare wood gets darker under drying-oil, burnt wood hardly: judge the tone of e/g)).toHaveLength(1);
        expect(await of(toned('finish b with wax'))).toBe('');
        const greys = '{ width 40 mm dither floyd-steinberg }';
        const bands = 'white-oak is ring-porous: early and late wood take the beam unlike, and greys come out in bands';
        expect(await of(toned('', 'oak-8', 'white-oak', greys).replaceAll('flag.svg', 'grey.png'))).toContain(bands);
        expect(await of(toned('', 'oak-8', 'white-oak'))).toBe('');
        expect(await of(toned('', 'maple-8', 'sugar-maple', greys).replaceAll('flag.svg', 'grey.png'))).toBe('');
    });
    it('oil on a sealer, and spirit on a wood whose colour runs into a pale one', async () => {
        const oiled = (between: string) =>
            `${shop}\nrecipe r { laser shed blank b { of walnut-12 size 100 x 80 mm grain along width } seal b with shellac wait 2 h ${between} finish b with drying-oil }`;
        expect(await of(oiled(''))).toContain('shellac keeps drying-oil out of the wood: wipe all of it off again');
        expect(await of(oiled('sand b { take 0.1 mm grits 180 }'))).not.toContain('out of the wood');
        const runs = 'the spirit of shellac dissolves the colour of african-padauk: spray or pad the first coat on thin';
        const red = (half: string) =>
            `board maple-10 { wood sugar-maple thickness 10 mm } veneer red-06 { wood african-padauk thickness 0.6 mm }\n${inlayRecipe(
                {
                    blanks: `blank tray { of ${half} size 200 x 150 mm grain along width } blank bird { of red-06 size 80 x 70 mm grain along width backing foil }`,
                    after: 'sand tray { flush then 0.10 mm grits 120, 180 } seal tray with shellac',
                },
            )}`;
        expect(await of(red('maple-10'))).toContain(runs);
        expect(await of(red('red-06'))).not.toContain('dissolves');
    });
    it('powder packed dry, and halves that do not say how they are sawn', async () => {
        const packed = (resin: string, depth: string) =>
            fillRecipe({ pocket: `art flag depth ${depth} air off` }).replace(
                'kind slow-epoxy',
                `kind cyanoacrylate-fill ${resin}`,
            );
        const dry = 'powder 60 % by volume solid density 8.5 g/cm3';
        expect(await of(packed(dry, '1.2 mm'))).toContain('thick glue stays on top');
        expect(await of(packed(dry, '1.2 mm'))).not.toContain('at a time');
        expect(await of(packed(dry, '4 mm'))).toContain('pack and wet it 3.2 mm at a time');
        expect(await of(packed('', '1.2 mm'))).not.toContain('thick glue');
        const wide = (sawn: string) =>
            inlayRecipe({
                blanks: `blank tray { of walnut-12 size 400 x 300 mm grain along width } blank bird { of maple-06 size 320 x 240 mm grain along width backing foil }`,
                pocket: 'rectangle 200 x 140 mm depth 0.55 mm air off',
                relief: 'rectangle 200 x 140 mm inverse within grown 6 mm mirror depth through air off',
            })
                .replaceAll('thickness 12 mm', `${sawn} thickness 12 mm`)
                .replaceAll('veneer maple-06 { wood', `veneer maple-06 { ${sawn} wood`);
        expect(await of(wide(''))).toContain('how both are sawn is not written: with one of them on the quarter they move');
        expect(await of(wide('sawn flat'))).not.toContain('sawn is not written');
        expect(await of(wide('sawn flat'))).not.toContain('end grain drinks');
        expect(await of(wide('sawn end'))).toContain('end grain drinks wood-glue: brush a thin coat in');
    });
    it('stands on the job sheet, in the checklist and in the plan', async () => {
        const plan = await planOf(fillRecipe());
        const step = plan.steps.find(({ advice: own }) => own !== undefined)!;
        const said = step.advice![0]!;
        expect(stepFacts(step)).toContainEqual({ label: 'mind', value: said });
        expect(jobSheet(plan, []).text).toContain(`<dt>mind</dt><dd>${said}</dd>`);
        expect(makeChecklist(plan).items[step.step.index]!.tooltip).toContain(said);
        expect(JSON.stringify(planJson(plan, []))).toContain(said);
    });
});
