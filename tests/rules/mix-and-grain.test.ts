import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

const two = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M2 2h14v20l-9 6-5-4z"/></svg>`;
workshop({ 'two.svg': two });

describe('mix-off-ratio', () => {
    const poured = (lines: string) =>
        `${fillRecipe().replace('with tide-blue', 'with own')}\nresin own { ${lines} colour #1f6f8b }`;
    it('parts that were swapped, mended by swapping them back', async () => {
        const text = poured('kind slow-epoxy mix 1 : 2 by volume');
        const finding = await one(text, 'mix-off-ratio');
        expect(finding).toMatchObject({ severity: 'warning' });
        expect(finding.message).toBe('own is mixed 1 : 2 by volume: more hardener than resin. The parts of resin come first.');
        expect(await expectMended(text, finding)).toContain('mix 2 : 1 by volume');
    });
    it('another ratio than that of its kind, or by weight instead of by volume', async () => {
        const other = await one(poured('kind table-top-epoxy mix 2 : 1 by volume'), 'mix-off-ratio');
        expect(other).toMatchObject({ severity: 'info' });
        expect(other.message).toBe('own is mixed 2 : 1 by volume; table-top-epoxy is mixed 1 : 1 by volume.');
        expect(await of(poured('kind deep-pour-epoxy mix 2 : 1 by weight'), 'mix-off-ratio')).toHaveLength(1);
    });
    it('is silent for a usual one, one within a tenth, and one that is not known', async () => {
        await silent(poured('kind slow-epoxy mix 2 : 1 by volume'), 'mix-off-ratio');
        await silent(poured('kind deep-pour-epoxy mix 2.1 : 1 by volume'), 'mix-off-ratio');
        await silent(poured('kind table-top-epoxy'), 'mix-off-ratio');
        await silent(poured('kind slow-epoxy mix 1 : 1 by volume'), 'mix-off-ratio');
        await silent(fillRecipe(), 'mix-off-ratio');
    });
});

describe('grain-unknown', () => {
    const blanks = (tray: string, bird: string, veneer = 'maple-06') =>
        `blank tray { of walnut-12 size 200 x 150 mm ${tray} } blank bird { of ${veneer} size 80 x 70 mm backing foil ${bird} }`;
    it('of a half of an inlay, with the way of the other half first', async () => {
        const text = inlayRecipe({ blanks: blanks('grain along height', '') });
        const finding = await one(text, 'grain-unknown');
        expect(finding).toMatchObject({ severity: 'hint' });
        expect(words(text, finding)).toBe('bird');
        expect(finding.fixes[0]).toMatchObject({ title: 'Say that the grain of bird runs along its height', preferred: true });
        await expectMended(text, finding);
        expect(await of(inlayRecipe({ blanks: blanks('', '') }), 'grain-unknown')).toHaveLength(2);
    });
    it('under a scan that goes by it', async () => {
        const text = (scan: string, grain = '') =>
            recipe(
                `blank b { of ash-10 size 100 x 80 mm ${grain} }\n engrave e on b { art flag tone 50 % scan ${scan} air off }`,
            );
        const finding = await one(text('across grain'), 'grain-unknown');
        expect(finding).toMatchObject({ severity: 'warning' });
        expect(words(text('across grain'), finding)).toBe('scan across grain');
        await expectMended(text('across grain'), finding);
        await expectMended(text('across grain'), finding, 1);
        await silent(text('at 45 deg'), 'grain-unknown');
        await silent(text('across grain', 'grain along width'), 'grain-unknown');
    });
    it('is silent where both say it, and for boards without one', async () => {
        await silent(inlayRecipe(), 'grain-unknown');
        const text = inlayRecipe({ blanks: blanks('grain along width', '', 'ply') });
        await silent(`${text}\nveneer ply { made of plywood thickness 0.6 mm }`, 'grain-unknown');
    });
});

describe('halves-differ says in what', () => {
    const halves = (pocket: string, relief: string) =>
        inlayRecipe({
            head: 'art two "two.svg" art small "two.svg" { width 38 mm }',
            pocket: `${pocket} depth 0.55 mm air off`,
            relief: `${relief} mirror depth through air off`,
        });
    const inverse = 'inverse within grown 6 mm';
    it('the size of one drawing, shapes, and where parts lie to each other', async () => {
        const size = await one(halves('art two', `art small ${inverse}`), 'halves-differ');
        expect(size.message).toContain('differ in the size of their art (small; two)');
        const apart = await one(
            halves(
                'art two at 80, 75 mm art two at 130, 75 mm',
                `art two ${inverse} at 18, 35 mm art two ${inverse} at 62, 35 mm`,
            ),
            'halves-differ',
        );
        expect(apart.message).toContain('differ in where their parts lie to each other');
    });
    it('and not where all of them lie', async () => {
        await silent(
            halves(
                'art two at 60, 75 mm art two at 104, 75 mm',
                `art two ${inverse} at 18, 35 mm art two ${inverse} at 62, 35 mm`,
            ),
            'halves-differ',
        );
    });
});
