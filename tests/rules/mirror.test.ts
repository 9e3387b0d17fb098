import { describe, expect, it } from 'vitest';
import { inlayRecipe } from '../kit/shop';
import { expectMended, one, recipe, silent, words, workshop } from './harness';

const two = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path class="left" d="M2 2h14v20l-9 6-5-4z"/><path class="right" d="M20 4h16v9h-8v12h-8z"/></svg>`;
workshop({ 'two.svg': two });

const halves = (pocket: string, relief: string) => inlayRecipe({ head: 'art two "two.svg"', pocket, relief });
const right = 'art flag inverse within grown 6 mm mirror depth through air off';

describe('halves-differ', () => {
    it('other art', async () => {
        const text = inlayRecipe({ pocket: 'art diamond depth 0.55 mm air off' });
        const finding = await one(text, 'halves-differ');
        expect(finding.severity).toBe('error');
        expect(finding.message).toContain('in their art (flag; diamond)');
        expect(words(text, finding)).toBe('art flag inverse within grown 6 mm');
    });
    it('other parts of the art: a part of the pocket stays empty', async () => {
        const text = halves(
            'art two depth 0.55 mm air off',
            'art two .left inverse within grown 6 mm mirror depth through air off',
        );
        const finding = await one(text, 'halves-differ');
        expect(finding.severity).toBe('warning');
        expect(finding.message).toContain('in the parts of two (.left; all)');
        expect(finding.message).toContain('stay empty');
    });
    it('another turn', async () => {
        const text = inlayRecipe({ relief: 'art flag inverse within grown 6 mm turned 20 deg mirror depth through air off' });
        expect((await one(text, 'halves-differ')).message).toContain('in their turn');
    });
    it('is silent for the same art wherever it lies, with any clearance, and with none', async () => {
        await silent(inlayRecipe(), 'halves-differ');
        await silent(inlayRecipe({ inlay: 'clearance 0.4 mm glue wood-glue' }), 'halves-differ');
        await silent(inlayRecipe({ inlay: 'glue wood-glue' }), 'halves-differ');
        await silent(inlayRecipe({ pocket: 'art flag at 60, 50 mm depth 0.55 mm air off' }), 'halves-differ');
    });
    it('is silent where two veneers share a pocket', async () => {
        const text = halves(
            'art two depth 0.55 mm air off',
            'art two .left inverse within grown 6 mm mirror depth through air off',
        ).replace(
            'wait 12 h',
            'engrave other on bird { art two .right inverse within grown 6 mm mirror depth through air off } inlay other into pocket { clearance 0.15 mm glue wood-glue } wait 12 h',
        );
        await silent(text, 'halves-differ');
    });
    it('leaves the missing mirror and the missing inverse to their own rules', async () => {
        await silent(inlayRecipe({ relief: right.replace(' mirror', '') }), 'halves-differ');
        await silent(inlayRecipe({ relief: 'art flag mirror depth through air off' }), 'halves-differ');
    });
});

describe('mirrored-face', () => {
    const text = recipe('blank b { of ash-10 size 100 x 80 mm }\n engrave e on b { art flag mirror depth 0.5 mm air off }');
    it('speaks of a mirrored face, and taking the mirror out mends it', async () => {
        const finding = await one(text, 'mirrored-face');
        expect(finding.severity).toBe('hint');
        expect(words(text, finding)).toBe('mirror');
        await expectMended(text, finding);
    });
    it('is silent for a veneer half, also before its inlay is written', async () => {
        await silent(inlayRecipe(), 'mirrored-face');
        await silent(
            recipe(`blank v { of maple-06 size 100 x 80 mm backing foil }\n engrave e on v { ${right} }`),
            'mirrored-face',
        );
    });
});
