import { describe, expect, it } from 'vitest';
import { inlayRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

/** A blade with a bridge of 0.1 mm to a square, and a loose hair of 0.08 mm. */
const thin = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M2 2h14v10h5v-3h10v12h-9v-8.9h-6v11h-14z"/><path d="M34 4h0.08v20h-0.08z"/></svg>`;
const disc = `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30"><circle cx="15" cy="15" r="12"/></svg>`;
workshop({ 'thin.svg': thin, 'disc.svg': disc });

const both = (art: string, inlay: string) =>
    inlayRecipe({
        head: 'art thin "thin.svg" art disc "disc.svg"',
        pocket: `art ${art} depth 0.55 mm air off`,
        relief: `art ${art} inverse within grown 6 mm mirror depth through air off`,
        inlay,
    });

describe('jams-before-floor', () => {
    it('is silent where a clearance stands that cannot be read', async () => {
        const found = await of(inlayRecipe({ inlay: 'clearance 0.12 s glue wood-glue' }), 'jams-before-floor');
        expect(found).toEqual([]);
    });
    it('a clearance too small for the lean of the walls, with one that will do', async () => {
        const text = inlayRecipe({ inlay: 'clearance 0.02 mm glue wood-glue' });
        const finding = await one(text, 'jams-before-floor');
        expect(finding.message).toMatch(/^With 0.02 mm of clearance the inlay jams 0\.\d+ mm in, before the floor at 0.55 mm/);
        expect(words(text, finding)).toBe('0.02 mm');
        await expectMended(text, finding);
    });
    it('an error where it hardly goes in, a warning where it goes in a good part of the way', async () => {
        const at = async (clearance: string) =>
            (await one(inlayRecipe({ inlay: `${clearance} glue wood-glue` }), 'jams-before-floor')).severity;
        expect(await at('')).toBe('error');
        expect(await at('clearance 0.005 mm')).toBe('error');
        expect(await at('clearance 0.05 mm')).toBe('warning');
    });
    it('no clearance at all', async () => {
        const text = inlayRecipe({ inlay: 'glue wood-glue' });
        const finding = await one(text, 'jams-before-floor');
        expect(finding.message).toContain('does not go in at all');
        await expectMended(text, finding);
    });
    it('is silent with enough, and where no spot is known to lean the walls', async () => {
        await silent(inlayRecipe(), 'jams-before-floor');
        await silent(inlayRecipe({ inlay: 'glue wood-glue' }).replace('spot 0.15 mm', ''), 'jams-before-floor');
    });
});

describe('wide-seam', () => {
    it('speaks, and a smaller clearance mends it without jamming', async () => {
        const text = inlayRecipe({ inlay: 'clearance 0.5 mm glue wood-glue' });
        const finding = await one(text, 'wide-seam');
        expect(words(text, finding)).toBe('0.5 mm');
        await silent(await expectMended(text, finding), 'jams-before-floor');
    });
    it('is silent for a good seam', async () => silent(inlayRecipe(), 'wide-seam'));
});

describe('parts-vanish', () => {
    it('says how many, how wide and where', async () => {
        const finding = await one(both('thin', 'clearance 0.15 mm glue wood-glue'), 'parts-vanish');
        expect(finding.message).toMatch(/^1 part and 1 bridge of relief vanish: narrower than the 0.15 mm/);
        expect(finding.message).toContain('0.08 mm at the narrowest');
        expect(finding.spots).toHaveLength(2);
        expect(finding.spots![0]).toMatchObject({ blank: 'bird' });
    });
    it('keeps a bridge wider than the clearance', async () => {
        expect((await one(both('thin', 'clearance 0.09 mm glue wood-glue'), 'parts-vanish')).message).toMatch(
            /^1 part of relief vanishes/,
        );
        await silent(both('thin', 'clearance 0.05 mm glue wood-glue'), 'parts-vanish');
    });
    it('is silent for stout art', async () => silent(inlayRecipe(), 'parts-vanish'));
});

describe('round-without-marks', () => {
    it('round art, mended with marks', async () => {
        const text = both('disc', 'clearance 0.15 mm glue wood-glue');
        const finding = await one(text, 'round-without-marks');
        expect(finding.message).toContain('fits in every position');
        await expectMended(text, finding);
    });
    it('art that repeats in four turns', async () => {
        expect((await one(both('diamond', 'clearance 0.15 mm glue wood-glue'), 'round-without-marks')).message).toContain(
            'fits in 4 positions',
        );
    });
    it('is silent with marks, with a reason, and for irregular art', async () => {
        await silent(both('disc', 'clearance 0.15 mm glue wood-glue marks 3'), 'round-without-marks');
        await silent(
            both('disc', 'clearance 0.15 mm glue wood-glue allow round-without-marks because "a plain disc"'),
            'round-without-marks',
        );
        await silent(inlayRecipe(), 'round-without-marks');
    });
});

const narrow = (width: number, height: number) =>
    `blank tray { of walnut-12 size 200 x 150 mm grain along width } blank bird { of maple-06 size ${width} x ${height} mm grain along width backing foil }`;
const filling = 'art flag inverse within rectangle 44 x 40 mm mirror depth through air off';
const marked = 'clearance 0.15 mm glue wood-glue marks 3';

describe('marks-no-room', () => {
    it('a veneer that the boundary fills, mended by a larger one', async () => {
        const text = inlayRecipe({ inlay: marked, relief: filling, blanks: narrow(46, 42) });
        const finding = await one(text, 'marks-no-room');
        expect(finding.message).toBe('None of the 3 marks have room beside relief and pocket.');
        expect(words(text, finding)).toBe('marks 3');
        expect(finding.fixes[0]!.title).toMatch(/^Make bird \d+ mm x \d+ mm$/);
        await expectMended(text, finding);
    });
    it('says what round art is without them, and that a larger blank does not help a boundary that is the blank', async () => {
        const text = inlayRecipe({
            inlay: marked,
            pocket: 'art diamond depth 0.55 mm air off',
            relief: 'art diamond inverse within blank mirror depth through air off',
        });
        const finding = await one(text, 'marks-no-room');
        expect(finding.message).toContain('which way round');
        expect(finding.message).toContain('A smaller boundary');
        expect(finding.fixes).toEqual([]);
        await silent(text, 'round-without-marks');
    });
    it('is silent with room, and without marks', async () => {
        await silent(inlayRecipe({ inlay: marked }), 'marks-no-room');
        await silent(inlayRecipe({ relief: filling, blanks: narrow(46, 42) }), 'marks-no-room');
    });
});

describe('marks-alike', () => {
    /** Room for marks only straight to the left and to the right of the art. */
    const slit = (width: number, marks: number) =>
        inlayRecipe({
            head: 'art disc "disc.svg"',
            pocket: 'art disc depth 0.55 mm air off',
            relief: 'art disc inverse within circle 40 mm mirror depth through air off',
            inlay: `clearance 0.15 mm glue wood-glue marks ${marks}`,
            blanks: narrow(width, 40),
        }).replace(
            'wait 12 h',
            'engrave bars on bird { rectangle 80 x 16.8 mm at 30, 8.4 mm rectangle 80 x 16.8 mm at 30, 31.6 mm depth through } wait 12 h',
        );
    it('two that can only stand opposite each other, where one alone would tell', async () => {
        const text = slit(60, 2);
        const finding = await one(text, 'marks-alike');
        expect(finding.message).toBe(
            'pocket is round, and its 2 marks come to lie on each other in more than one of its turns: they do not tell which is right.',
        );
        expect(words(text, finding)).toBe('marks 2');
        expect(await expectMended(text, finding)).toContain('marks 1');
    });
    it('is silent where two stand askew, for one, and for art that goes in one way only', async () => {
        const two = both('disc', 'clearance 0.15 mm glue wood-glue marks 2');
        await silent(two, 'marks-alike');
        await silent(two.replace('marks 2', 'marks 1'), 'marks-alike');
        await silent(inlayRecipe({ inlay: 'clearance 0.15 mm glue wood-glue marks 2' }), 'marks-alike');
    });
});

describe('marks-stay', () => {
    it('speaks where the board is hardly sanded', async () => {
        const after = 'sand tray { flush then 0.02 mm grits 180, 240 }';
        const finding = await one(inlayRecipe({ inlay: marked, after }), 'marks-stay');
        expect(finding.message).toBe('The marks of pocket stay in sight: only 0.02 mm comes off the face of tray.');
        await silent(inlayRecipe({ after }), 'marks-stay');
        const text = inlayRecipe({ inlay: marked, after });
        expect(await expectMended(text, finding)).toContain('flush then 0.1 mm');
        const flush = inlayRecipe({ inlay: marked, after: 'sand tray { flush grits 180, 240 }' });
        expect(await expectMended(flush, await one(flush, 'marks-stay'))).toContain('take 0.1 mm');
        const none = inlayRecipe({ inlay: marked, after: '' });
        expect((await one(none, 'marks-stay')).fixes).toEqual([]);
    });
    it('is silent where sanding takes them', async () => silent(inlayRecipe({ inlay: marked }), 'marks-stay'));
});

describe('beyond-boundary', () => {
    it('art that reaches past the boundary of its inverse', async () => {
        const text = inlayRecipe({ relief: 'art flag inverse within circle 30 mm mirror depth through air off' });
        const finding = await one(text, 'beyond-boundary');
        expect(finding.severity).toBe('error');
        expect(words(text, finding)).toBe('circle 30 mm');
        await expectMended(text, finding);
    });
    it('is silent for a boundary around all of it', async () => {
        await silent(
            inlayRecipe({ relief: 'art flag inverse within circle 56 mm mirror depth through air off' }),
            'beyond-boundary',
        );
        await silent(inlayRecipe(), 'beyond-boundary');
    });
});

describe('beyond-field', () => {
    const text = (size: string) =>
        recipe(`blank b { of ash-10 size 900 x 900 mm }\n engrave e on b { rectangle ${size} tone 60 % air off }`);
    it('larger than the field', async () => {
        const finding = await one(text('620 x 50 mm'), 'beyond-field');
        expect(finding).toMatchObject({ severity: 'error' });
        expect(finding.message).toBe('e is 620 mm by 50 mm; shed reaches 600 mm by 400 mm. Make it smaller, or divide it.');
    });
    it('only the other way round', async () => {
        const finding = await one(text('50 x 500 mm'), 'beyond-field');
        expect(finding).toMatchObject({ severity: 'error' });
        expect(finding.message).toContain('It fits the other way round: swap the sides');
    });
    it('is silent at its very size, and without a field', async () => {
        // Along the line itself: half a kerf outside of it the head would leave the field.
        const cut = 'blank b { of ash-10 size 600 x 400 mm }\n cut c on b { rectangle 600 x 400 mm without kerf air on }';
        await silent(recipe(cut), 'beyond-field');
        await one(recipe(cut.replace('mm without kerf air', 'mm without kerf lead-in 1 mm air')), 'beyond-field');
        await silent(text('620 x 50 mm').replace('field 600 x 400 mm', ''), 'beyond-field');
    });

    /** On a machine of 100 by 80 mm that needs 20.83 mm to reach 500 mm/s. */
    const small = (body: string, laser = '') => recipe(body).replace('field 600 x 400 mm', `field 100 x 80 mm ${laser}`);
    const engraved = (size: string, blank = '100 x 80 mm', scan = 'across') =>
        `blank b { of walnut-12 size ${blank} grain along width }\n engrave e on b { ${size} power 50 % speed 500 mm/s passes 1 scan ${scan} grain air off }`;

    it('counts the run-up of the head: art that fits by itself', async () => {
        const finding = await one(small(engraved('rectangle 98 x 78 mm')), 'beyond-field');
        expect(finding.message).toBe(
            'e is 98 mm by 78 mm, and the head runs up to 20.83 mm beyond it, over 97.9 mm by 119.67 mm; shed reaches 100 mm by 80 mm. There is room for 1 mm on either side, enough for 109 mm/s: scan no faster, make the art smaller, or use a larger machine.',
        );
        const along = await one(small(engraved('rectangle 98 x 78 mm', '100 x 80 mm', 'along')), 'beyond-field');
        expect(along.message).toContain('beyond it, over 139.67 mm by 77.9 mm;');
        // Half of what it says is wrong as well as all of it is right.
        await silent(small(engraved('rectangle 98 x 78 mm')).replace('speed 500', 'speed 109'), 'beyond-field');
        await one(small(engraved('rectangle 98 x 78 mm')).replace('speed 500', 'speed 111'), 'beyond-field');
        await silent(small(engraved('rectangle 98 x 38 mm')), 'beyond-field');
    });
    it('counts the overtravel that is written instead', async () => {
        await silent(small(engraved('rectangle 98 x 78 mm'), 'overtravel 1 mm'), 'beyond-field');
        const finding = await one(small(engraved('rectangle 98 x 78 mm'), 'overtravel 3 mm'), 'beyond-field');
        expect(finding.message).toContain('scan no faster with `overtravel 1 mm`');
    });
    it('finds lines that would have room the other way', async () => {
        const finding = await one(small(engraved('rectangle 50 x 78 mm')), 'beyond-field');
        expect(finding.message).toContain('turn the scan lines by 90 deg');
        await silent(small(engraved('rectangle 50 x 78 mm', '100 x 80 mm', 'along')), 'beyond-field');
    });
    it('counts the way from the corner of the blank: art far out on a larger one', async () => {
        const text = engraved('rectangle 30 x 20 mm at 175, 30 mm', '200 x 60 mm');
        const finding = await one(small(text), 'beyond-field');
        expect(finding.message).toMatch(
            /^e lies too far from the lower left corner of b, which has X 0 Y 0: the head moves over 189\.95 mm by 61\.67 mm; .* Write `zero lower-right` in the block of shed/,
        );
        expect(words(small(text), finding)).toContain('at 175, 30 mm');
        await silent(small(text, 'zero lower-right'), 'beyond-field');
        await silent(small(text.replace('at 175, 30', 'at 30, 30')), 'beyond-field');
        const wide = await one(small(engraved('rectangle 30 x 20 mm', '250 x 60 mm')), 'beyond-field');
        expect(wide.message).toContain('Write `zero middle` in the block of shed');
    });
    it('adds up the steps of a set-up', async () => {
        const two = `blank b { of walnut-12 size 100 x 80 mm grain along width }
            engrave e on b { rectangle 30 x 20 mm at 45, 40 mm power 50 % speed 500 mm/s passes 1 scan along grain air off }
            engrave f on b { rectangle 10 x 20 mm at 84, 40 mm power 50 % speed 100 mm/s passes 1 scan along grain air off }`;
        await silent(small(two), 'beyond-field');
        const both = two.replace('at 45, 40', 'at 26, 40').replace('at 84, 40', 'at 94, 40');
        const finding = await one(small(both), 'beyond-field');
        expect(finding.message).toMatch(/^The steps of set-up 1 together move the head over 109\.\d+ mm by/);
        await silent(small(both.replace('engrave f', 'sand b { grits 120 }\n engrave f')), 'beyond-field');
    });
});
