import { describe, expect, it } from 'vitest';
import { pngOf } from '../art/pictures';
import { inlayRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

const two = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path class="left" d="M2 2h14v20l-9 6-5-4z"/><path class="right" d="M20 4h16v9h-8v12h-8z"/></svg>`;
const lettered = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M6 2h3v26h-3z"/><text x="10" y="20">Tide</text></svg>`;
const grey = pngOf(
    { columns: 40, rows: 20, depth: 8, colour: 0 },
    Uint8Array.from({ length: 20 * 41 }, (_, i) => (i % 41 === 0 ? 0 : (i % 41) * 5)),
);
workshop({ 'two.svg': two, 'words.svg': lettered, 'dots.png': grey });

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
        expect(finding.message).toMatch(
            /^The halves relief and pocket differ in the parts of two \(\.left; all\): [\d.]+ mm² of the pocket would stay empty\.$/,
        );
        expect(finding.spots!.length).toBeGreaterThan(0);
    });
    it('another turn', async () => {
        const text = inlayRecipe({ relief: 'art flag inverse within grown 6 mm turned 20 deg mirror depth through air off' });
        expect((await one(text, 'halves-differ')).message).toContain('in their turn');
    });
    it('is mended by making the veneer half like the pocket: art, parts, turn', async () => {
        const two = 'art two depth 0.55 mm air off';
        const relief = (art: string) => `art ${art} mirror depth through air off`;
        const inverse = 'inverse within grown 6 mm';
        for (const [pocket, veneer, after] of [
            ['art diamond depth 0.55 mm air off', `flag ${inverse}`, `art diamond ${inverse}`],
            [two, `two .left ${inverse}`, `art two ${inverse}`],
            ['art two .left depth 0.55 mm air off', `two ${inverse}`, `art two .left ${inverse}`],
            ['art two .right depth 0.55 mm air off', `two .left ${inverse}`, `art two .right ${inverse}`],
            [two, `two ${inverse} turned 20 deg`, `art two ${inverse} turned 0 deg`],
            ['art two turned 15 deg depth 0.55 mm air off', `two ${inverse}`, `art two ${inverse} turned 15 deg`],
        ] as const) {
            const text = halves(pocket, relief(veneer));
            expect(await expectMended(text, await one(text, 'halves-differ'))).toContain(after);
        }
    });
    it('leaves a pocket that an offset made wider to wide-seam', async () => {
        await silent(inlayRecipe({ pocket: 'art flag depth 0.55 mm offset 0.4 mm air off' }), 'halves-differ');
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
    const face = (art: string) =>
        recipe(
            `art words "words.svg"\n art dots "dots.png" { width 8 mm dither ordered }\n blank b { of ash-10 size 100 x 80 mm }\n engrave e on b { ${art} mirror tone 50 % air off }`,
        );
    const text = face('art flag');
    it('says how much lies elsewhere, and taking the mirror out mends it', async () => {
        const finding = await one(text, 'mirrored-face');
        expect(finding.severity).toBe('warning');
        expect(finding.message).toMatch(/^e is mirrored, but b is not turned over .*, and \d+(\.\d)? mm² of it lie elsewhere/);
        expect(finding.message).toContain('Lettering would read backwards.');
        expect(words(text, finding)).toBe('mirror');
        await expectMended(text, finding);
    });
    it('knows text that has not been turned into paths', async () => {
        expect((await one(face('art words'), 'mirrored-face')).message).toContain(
            'The text of words would read backwards once it has been turned into paths.',
        );
    });
    it('an edge that is cut mirrored around what is engraved the right way round', async () => {
        const edge = (art: string, engraved: string) =>
            recipe(
                `blank b { of ash-10 size 100 x 80 mm }\n engrave e on b { circle 5 mm at 47, 36 mm ${engraved} tone 50 % air off }\n cut rim on b { art ${art} mirror power 90 % speed 8 mm/s air on }`,
            );
        const finding = await one(edge('flag', ''), 'mirrored-face');
        expect(finding.message).toMatch(
            /^rim is mirrored, but what is engraved on b is not.*It does not follow what is engraved\.$/,
        );
        await expectMended(edge('flag', ''), finding);
        await silent(edge('diamond', ''), 'mirrored-face');
        await silent(edge('flag', 'mirror'), 'mirrored-face');
    });
    it('takes a picture in dots for what it is, whatever its outline', async () => {
        expect((await one(face('art dots'), 'mirrored-face')).message).not.toContain('mm²');
    });
    it('is silent where the mirror changes nothing, and with a reason', async () => {
        await silent(face('art diamond'), 'mirrored-face');
        await silent(face('art diamond at 20, 30 mm art diamond at 60, 30 mm'), 'mirrored-face');
        await silent(face('allow mirrored-face because "seen in a mirror" art flag'), 'mirrored-face');
        expect(await of(face('art diamond at 20, 30 mm art diamond at 60, 40 mm'), 'mirrored-face')).toHaveLength(1);
    });
    it('is silent for a veneer half, also before its inlay is written', async () => {
        await silent(inlayRecipe(), 'mirrored-face');
        await silent(
            recipe(`blank v { of maple-06 size 100 x 80 mm backing foil }\n engrave e on v { ${right} }`),
            'mirrored-face',
        );
    });
    it('a pocket mirrored in place of its veneer half fits, and shows the mirror image', async () => {
        const swapped = (art: string) =>
            inlayRecipe({
                pocket: `art ${art} mirror depth 0.55 mm air off`,
                relief: `art ${art} inverse within grown 6 mm depth through air off`,
            });
        const finding = await one(swapped('flag'), 'mirrored-face');
        expect(finding.message).toMatch(/^pocket is mirrored and relief is not: the halves fit/);
        const after = await expectMended(swapped('flag'), finding);
        for (const rule of ['mirrored-twice', 'not-mirrored', 'halves-differ']) await silent(after, rule);
        await silent(swapped('diamond'), 'mirrored-face');
    });
});
