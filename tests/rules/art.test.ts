import { describe, expect, it } from 'vitest';
import { pngOf } from '../art/pictures';
import { fillRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

const svg = (body: string, size = 'width="30mm" height="20mm"') =>
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 30 20"><path d="M1 1h20v10h-20z"/>\n${body}</svg>`;
const filters = Array.from(
    { length: 10 },
    (_, i) => `<image href="https://tide.example/${i}.png" x="${i}" y="1" width="2" height="2"/>`,
);
workshop({
    'named.svg': svg('<text x="2" y="18">Saltings</text>\n<text x="12" y="18">Slipway</text>'),
    'open.svg': svg('<path d="M1 15h20v3"/>'),
    'bare.svg': svg('', ''),
    'broken.svg': svg('').slice(0, -20),
    'many.svg': svg(filters.join('\n')),
    'empty.svg': '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20"></svg>',
    'pale.svg': svg('').replace('<path', '<path fill="#999"'),
    'photo.png': pngOf(
        { columns: 40, rows: 20, depth: 8, colour: 0 },
        Uint8Array.from({ length: 20 * 41 }, (_, i) => (i % 41 > 20 ? 255 : 0)),
    ),
    'white.svg': svg('').replace('<path', '<path fill="#fff"'),
});

const engraving = (file: string, more = '') =>
    recipe(
        `blank b { of walnut-12 size 100 x 80 mm grain along width } art a "${file}" ${more} engrave e on b { art a depth 0.4 mm air off }`,
    );

describe('art-problems', () => {
    it('text is said once, with its places', async () => {
        const text = engraving('named.svg');
        const finding = await one(text, 'art-problems');
        expect(finding.severity).toBe('warning');
        expect(finding.message).toMatch(/^Text is not drawn: .* \(named\.svg, line 2, column 1, and 1 more place\)$/);
        expect(words(text, finding)).toBe('"named.svg"');
    });
    it('a path that is left open is told, since the fill closes it', async () => {
        expect(await one(engraving('open.svg'), 'art-problems')).toMatchObject({ severity: 'info' });
    });
    it('a file without a size, unless the recipe gives one', async () => {
        expect((await one(engraving('bare.svg'), 'art-problems')).message).toContain('how large it is');
        await silent(engraving('bare.svg', '{ width 20 mm }'), 'art-problems');
        await silent(engraving('bare.svg', '{ height 20 mm }'), 'art-problems');
    });
    it('broken markup is an error', async () => {
        const severities = (await of(engraving('broken.svg'), 'art-problems')).map(({ severity }) => severity);
        expect(severities).toContain('error');
    });
    it('of many different ones the first are told and the others counted', async () => {
        const found = await of(engraving('many.svg'), 'art-problems');
        expect(found.length).toBeLessThanOrEqual(9);
        expect(found[0]!.severity).toBe('warning');
    });
    it('is silent for plain art', async () => silent(engraving('flag.svg'), 'art-problems'));
});

describe('art-missing', () => {
    it('art in which nothing is painted, said once', async () => {
        const text = engraving('empty.svg');
        expect(await one(text, 'art-missing')).toMatchObject({
            severity: 'error',
            message: 'Nothing is painted in this drawing. (empty.svg)',
        });
        expect(await of(text, 'nothing-burns')).toEqual([]);
        expect(await of(text, 'art-problems')).toEqual([]);
    });
    it('is silent for plain art', async () => silent(engraving('flag.svg'), 'art-missing'));
});

describe('nothing-burns', () => {
    const picked = (pick: string, file = 'flag.svg') => engraving(file).replace('art a depth', `art a ${pick} depth`);
    it('a part that the art does not have, with the one that was meant', async () => {
        const text = picked('#pol');
        const finding = await one(text, 'nothing-burns');
        expect(finding.message).toBe('No part of a is called `#pol`. Did you mean `#pole`?');
        expect(words(text, finding)).toBe('#pol');
        expect(await expectMended(text, finding)).toContain('art a #pole depth');
    });
    it('or with those that it has', async () => {
        const finding = await one(picked('.sail'), 'nothing-burns');
        expect(finding.message).toBe('No part of a is called `.sail`. It has #pole, .cloth.');
        expect((await one(picked('.sail', 'open.svg'), 'nothing-burns')).message).toContain('None of its parts has a name.');
    });
    it('also beside one that it has', async () => {
        expect((await one(picked('#pole .sail'), 'nothing-burns')).message).toContain('`.sail`');
    });
    it('nothing dark enough, by the threshold that is written', async () => {
        const finding = await one(engraving('white.svg'), 'nothing-burns');
        expect(finding.message).toBe('Nothing of a is darker than 50 %, so nothing burns.');
        const pale = engraving('pale.svg', '{ threshold 65 % }');
        expect((await one(pale, 'nothing-burns')).related).toHaveLength(1);
        await silent(pale.replace('65 %', '20 %'), 'nothing-burns');
    });
    it('parts of a picture', async () => {
        const text = picked('#moon', 'photo.png').replace('"photo.png"', '"photo.png" { width 20 mm }');
        const finding = await one(text, 'nothing-burns');
        expect(finding.message).toBe('a is a picture: it has no parts to pick.');
        await expectMended(text, finding);
    });
    it('is silent for parts that burn, by id and by class', async () => {
        await silent(picked('#pole .cloth'), 'nothing-burns');
        await silent(engraving('flag.svg'), 'nothing-burns');
    });
});

describe('outline-of-bitmap', () => {
    it('is silent for a drawing, and for a picture without an outline', async () => {
        await silent(engraving('flag.svg').replace('air off', 'outline 1 air off'), 'outline-of-bitmap');
    });
});

describe('off-blank', () => {
    const at = (place: string) => engraving('flag.svg').replace('art a depth', `art a at ${place} depth`);
    it('is moved as far as it takes, in the unit that is written', async () => {
        const text = at('95, 70 mm');
        const finding = await one(text, 'off-blank');
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Move it to 89, 67 mm']);
        await expectMended(text, finding);
        const inches = at('4, 1.5 in');
        expect((await one(inches, 'off-blank')).fixes[0]!.title).toMatch(/^Move it to 3\.\d+, 1\.5 in$/);
        await expectMended(inches, await one(inches, 'off-blank'));
    });
    it('says how much room it takes where there is too little', async () => {
        const finding = await one(at('50, 40 mm').replace('size 100 x 80', 'size 20 x 80'), 'off-blank');
        expect(finding.message).toMatch(/\(b is 20 mm by 80 mm\): it takes 25 mm by 26 mm\.$/);
        expect(finding.fixes).toEqual([]);
    });
    it('is silent on the blank', async () => silent(at('50, 40 mm'), 'off-blank'));

    describe('a picked part, which keeps its place in the whole drawing', () => {
        const picked = (where: string) =>
            engraving('flag.svg').replace('art a depth', `art a #pole${where} depth`).replace('size 100 x 80', 'size 12 x 40');
        it('is laid with its own middle where it was meant to be', async () => {
            const text = picked('');
            const finding = await one(text, 'off-blank');
            expect(finding.message).toMatch(/#pole keeps its place in a, and the middle of all of a lies at 6 mm, 20 mm\.$/);
            expect(finding.fixes.map(({ title }) => title)).toEqual(['Lay the middle of #pole there (at 18.5, 20 mm)']);
            expect(await expectMended(text, finding)).toContain('art a #pole at 18.5, 20 mm');
        });
        it('is silent where it lies on the blank all the same', async () =>
            silent(engraving('flag.svg').replace('art a depth', 'art a #pole depth'), 'off-blank'));
    });
});

describe('the figures that mend', () => {
    it('keep the unit that is written', async () => {
        const text = fillRecipe({ pocket: 'art flag depth 0.012 in air off', wood: 'walnut-12', after: '' });
        const finding = await one(text, 'shallow-fill');
        expect(finding.fixes.map(({ title }) => title)).toEqual([expect.stringMatching(/^Make hollow 0\.0\d\d? in deep$/)]);
        await expectMended(text, finding);
    });
    it('are none where the settings are held and would go on giving what they give', async () => {
        const held = 'art flag depth 0.2 mm power 60 % speed 300 mm/s passes 1 air off';
        const finding = await one(fillRecipe({ pocket: held, wood: 'walnut-12', after: '' }), 'shallow-fill');
        expect(finding.fixes).toEqual([]);
    });
    it('are none where the board is too thin for them', async () => {
        const thin = fillRecipe({ pocket: 'art flag depth 0.2 mm air off', wood: 'thin', after: '' }).replace(
            'recipe coaster',
            'board thin { wood white-ash thickness 1.2 mm }\nrecipe coaster',
        );
        expect((await one(thin, 'shallow-fill')).message).toMatch(/a fill needs 0\.3 mm to hold\.$/);
    });
});
