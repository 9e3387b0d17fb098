import { describe, expect, it } from 'vitest';
import { coupon, inlayRecipe } from '../kit/shop';
import { all, expectMended, recipe as made, of, one, silent, words, workshop } from './harness';

workshop({
    'buoy.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><circle cx="20" cy="20" r="15"/></svg>`,
});

const stock = `
board walnut-3 { wood black-walnut  thickness 3.2 mm +- 0.1 mm  moisture 8 % }
${coupon('walnut-3', 'shed', '  burn 80 % at 300 mm/s x 4 gives 1.33 mm\n')}
${coupon('ash-10', 'shed', '  burn 80 % at 300 mm/s x 4 gives 1.33 mm\n')}
resin bronze { kind slow-epoxy  powder 30 %  colour #6b5a3a }
resin buoy-red { kind slow-epoxy  colour #a12a1c }
`;
const recipe = (body: string): string => made(body, stock);
const board = 'blank b { of ash-10 size 100 x 100 mm grain along width }';
const thin = 'blank b { of walnut-3 size 100 x 100 mm grain along width }';
const at = (name: string, size: string, place: string, how = 'depth 0.6 mm') =>
    `engrave ${name} on b { rectangle ${size} mm at ${place} mm ${how} air off }\n`;
const seal = 'seal b with shellac { coats 2 }\n wait 2 h\n';

describe('depth-in-sum', () => {
    const three = (depth: string) =>
        recipe(
            `${thin}\n ${at('one', '20 x 20', '30, 30', `depth ${depth}`)} ${at('two', '20 x 20', '40, 30', `depth ${depth}`)} ${at('three', '20 x 20', '40, 40', `depth ${depth}`)}`,
        );
    it('three pockets that each leave enough, and together nothing', async () => {
        const finding = await one(three('1.2 mm'), 'depth-in-sum');
        expect(finding.severity).toBe('error');
        expect(finding.message).toMatch(
            /1\.2 mm of one, 1\.2 mm of two and 1\.2 mm of three come to 3\.6 mm: walnut-3 is only 3\.2 mm thick/,
        );
        expect(finding.related.map(({ message }) => message)).toEqual(['one digs here too.', 'two digs here too.']);
        // 20 x 20 mm shifted by 10 mm each way: 10 x 10 mm lie in all three.
        expect(finding.message).toContain('(100 mm²)');
    });
    it('a floor that two leave too thin, with the depth that leaves enough', async () => {
        const text = recipe(
            `${thin}\n ${at('one', '20 x 20', '30, 30', 'depth 1.2 mm')} ${at('two', '20 x 20', '40, 30', 'depth 1.1 mm')}`,
        );
        const finding = await one(text, 'depth-in-sum');
        expect(finding.severity).toBe('warning');
        expect(words(text, finding)).toBe('1.1 mm');
        const after = await expectMended(text, finding);
        await silent(after, 'thin-floor');
    });
    it('what was sanded off counts too', async () => {
        const text = recipe(`${thin}\n sand b { take 0.9 mm grits 80 }\n ${at('one', '20 x 20', '30, 30', 'depth 1.25 mm')}`);
        expect((await one(text, 'depth-in-sum')).message).toContain('0.9 mm of sanding and 1.25 mm of one come to 2.15 mm');
    });
    it('is silent apart, side by side, for a thick board, and where one step alone is too deep', async () => {
        await silent(
            recipe(
                `${thin}\n ${at('one', '20 x 20', '20, 30', 'depth 1.2 mm')} ${at('two', '20 x 20', '60, 30', 'depth 1.2 mm')}`,
            ),
            'depth-in-sum',
        );
        await silent(
            recipe(
                `${thin}\n ${at('one', '20 x 20', '20, 30', 'depth 1.2 mm')} ${at('two', '20 x 20', '40, 30', 'depth 1.2 mm')}`,
            ),
            'depth-in-sum',
        );
        await silent(three('1.2 mm').replace('of walnut-3', 'of walnut-12'), 'depth-in-sum');
        const deep = recipe(
            `${thin}\n ${at('one', '20 x 20', '30, 30', 'depth 0.3 mm')} ${at('two', '20 x 20', '30, 30', 'depth 2.6 mm')}`,
        );
        await silent(deep, 'depth-in-sum');
        expect(await of(deep, 'thin-floor')).toHaveLength(1);
    });
    it('is said in a variant, at what the variant changes', async () => {
        const base = three('0.5 mm');
        const text = `${base}\nrecipe deep "Deep" based on thing {\n  engrave one { depth 1.25 mm }\n  engrave two { depth 1.25 mm }\n}\n`;
        const found = (await all(text)).filter(({ rule }) => rule === 'depth-in-sum');
        expect(found).not.toEqual([]);
        for (const { where } of found) expect(where.offset).toBeGreaterThanOrEqual(base.length);
    });
});

describe('pocket-in-pocket', () => {
    const shelved = (placed: string, between = '') =>
        inlayRecipe().replace(
            'engrave pocket',
            `engrave shelf on tray { ${placed} depth 0.5 mm air off }\n ${between} engrave pocket`,
        );
    it('the pocket of an inlay lies in one that is open', async () => {
        const finding = await one(shelved('rectangle 60 x 60 mm'), 'pocket-in-pocket');
        expect(finding.message).toMatch(
            /pocket is to be 0\.55 mm deep, but .* shelf has dug 0\.5 mm already: there it comes to 1\.05 mm/,
        );
    });
    it('is silent beside it, for a mere colour, and for open steps', async () => {
        await silent(shelved('rectangle 20 x 20 mm at 20, 20 mm'), 'pocket-in-pocket');
        await silent(shelved('rectangle 60 x 60 mm').replace('depth 0.5 mm air', 'tone 60 % air'), 'pocket-in-pocket');
        await silent(
            recipe(`${board}\n ${at('one', '40 x 40', '50, 50')} ${at('two', '20 x 20', '50, 50')}`),
            'pocket-in-pocket',
        );
    });
});

describe('thin-wall', () => {
    const pair = (gap: number, between = '') =>
        recipe(`${board}\n ${at('one', '20 x 20', '30, 50')} ${between} ${at('two', '20 x 20', `${50 + gap}, 50`)}`);
    it('between two pockets, with how far to move them', async () => {
        const finding = await one(pair(0.2), 'thin-wall');
        // Six tenths of 0.6 mm, and a quarter more in ring-porous ash: 0.45 mm. Each rim lies 0.036 mm beyond what is drawn: no square
        // was burnt in ash, so its threshold is a guess.
        expect(finding.message).toBe(
            'Between two and one only 0.13 mm of wood is left, 0.6 mm high: leave 0.45 mm, so move them 0.35 mm apart.',
        );
        await silent(pair(0.2 + 0.35), 'thin-wall');
        // Their drawn edges stand far enough apart, the burnt ones do not.
        await one(pair(0.46), 'thin-wall');
    });
    it('where the width of the beam leaves none', async () => {
        expect((await one(pair(0.06), 'thin-wall')).message).toContain(
            'Between two and one the beam’s width leaves no wood, 0.6 mm high',
        );
    });
    it('to the blank’s edge, to a rim and to a hole', async () => {
        const edge = recipe(`${board}\n ${at('one', '20 x 20', '10.3, 50')}`);
        expect((await one(edge, 'thin-wall')).message).toContain('Between one and the edge of the blank only 0.26 mm');
        const rim = recipe(
            `${board}\n ${at('one', '20 x 20', '50, 50')} cut out on b { rectangle 20.8 x 40 mm at 50, 50 mm air on }`,
        );
        expect((await one(rim, 'thin-wall')).message).toContain('Between out and one only 0.36 mm');
        const hole = recipe(`${board}\n ${at('one', '20 x 20', '50, 50')} cut hole on b { circle 6 mm at 63.3, 50 mm air on }`);
        expect((await one(hole, 'thin-wall')).message).toContain('Between hole and one only 0.26 mm');
    });
    it('is silent with wood enough, for mere colours, for what touches or crosses, and beside cured resin', async () => {
        await silent(pair(2), 'thin-wall');
        await silent(pair(0), 'thin-wall');
        await silent(recipe(`${board}\n ${at('one', '40 x 10', '50, 50')} ${at('two', '10 x 40', '50, 50')}`), 'thin-wall');
        await silent(pair(0.2).replaceAll('depth 0.6 mm', 'tone 60 %'), 'thin-wall');
        await silent(pair(0.2, `${seal} fill one with tide-blue wait 24 h sand b { flush grits 120 }`), 'thin-wall');
    });
});

describe('fill-runs-over', () => {
    const two = (place: string, second = 'buoy-red', between = '') =>
        recipe(
            `${board}\n ${at('one', '20 x 20', '30, 50')} ${at('two', '20 x 20', place)} ${seal} fill one with tide-blue ${between} ${second === '' ? '' : `fill two with ${second}`} wait 24 h sand b { flush then 0.1 mm grits 120 }`,
        );
    it('two colours that touch', async () => {
        const finding = await one(two('50, 50'), 'fill-runs-over');
        expect(finding.message).toContain(
            'tide-blue runs from one into two, which is meant for buoy-red: no wall is between them. Leave 0.45 mm of wood',
        );
    });
    it('a pocket that stays open beside the fill', async () => {
        expect((await one(two('50, 50', ''), 'fill-runs-over')).message).toContain('into two, which stays open');
    });
    it('is silent with a wall, with one colour in both, and where the first was filled before the second was burnt', async () => {
        await silent(two('50.6, 50'), 'fill-runs-over');
        await silent(two('50, 50', 'tide-blue'), 'fill-runs-over');
        await silent(
            recipe(
                `${board}\n ${at('one', '20 x 20', '30, 50')} ${seal} fill one with tide-blue wait 24 h sand b { flush grits 120 } ${at('two', '20 x 20', '50, 50')} ${seal} fill two with buoy-red wait 24 h sand b { flush then 0.1 mm grits 120 }`,
            ),
            'fill-runs-over',
        );
    });
});

describe('cut-through-work', () => {
    const cut = (placed: string) => `cut out on b { ${placed} air on }`;
    const filled = `${seal} fill one with tide-blue wait 24 h sand b { flush then 0.1 mm grits 120 }`;
    it('through an open pocket that is filled later; cut at the end the resin rule speaks', async () => {
        const text = recipe(`${board}\n ${at('one', '40 x 20', '50, 50')} ${cut('rectangle 30 x 60 mm at 50, 50 mm')} ${filled}`);
        const finding = await one(text, 'cut-through-work');
        expect(finding.message).toContain(
            'out cuts 40 mm through one, which is filled only afterwards: tide-blue runs out there',
        );
        await expectMended(text, finding);
    });
    it('a hole in an engraving', async () => {
        const text = recipe(`${board}\n ${at('one', '40 x 20', '50, 50')} ${cut('circle 6 mm at 50, 60 mm')}`);
        // Half of the hole, 14.1 mm2, lies in it.
        expect((await one(text, 'cut-through-work')).message).toMatch(/^out takes 14\.\d mm² out of one/);
    });
    it('through a laid veneer', async () => {
        const text = inlayRecipe({
            after: 'sand tray { flush then 0.10 mm grits 120, 180, 240 } cut hole on tray { circle 6 mm at 99, 67 mm air on }',
        });
        expect((await one(text, 'cut-through-work')).message).toMatch(/through relief, a veneer on glue/);
    });
    it('is silent around the work, and where a pattern runs out over the edge', async () => {
        await silent(
            recipe(`${board}\n ${at('one', '40 x 20', '50, 50')} ${cut('rectangle 60 x 60 mm at 50, 50 mm')} ${filled}`),
            'cut-through-work',
        );
        await silent(recipe(`${board}\n ${at('one', '90 x 90', '50, 50')} ${cut('circle 80 mm')}`), 'cut-through-work');
    });
});

describe('laser-on-resin, by what the face holds then', () => {
    const poured = (after: string, resin = 'tide-blue') =>
        recipe(
            `${board}\n ${at('one', '30 x 20', '50, 50')} ${seal} fill one with ${resin} wait 24 h sand b { flush then 0.1 mm grits 120 } ${after}`,
        );
    it('a cut through a cured fill, with its length', async () => {
        const finding = await one(poured('cut out on b { rectangle 20 x 60 mm air on }'), 'laser-on-resin');
        expect(finding.message).toBe('The laser cuts along 40 mm of tide-blue: resin must not be burnt.');
    });
    it('metal powder throws the beam back', async () => {
        const finding = await one(poured('cut out on b { rectangle 20 x 60 mm air on }', 'bronze'), 'laser-on-resin');
        expect(finding.message).toContain('the metal powder in it throws the beam back');
    });
    it('is silent for a cut around it', async () =>
        silent(poured('cut out on b { rectangle 60 x 60 mm air on }'), 'laser-on-resin'));
});

describe('laser-on-wet', () => {
    const coated = (wait: string) =>
        recipe(`${board}\n seal b with shellac { coats 2 } ${wait} ${at('one', '20 x 20', '50, 50')}`);
    it('a coat that is still wet', async () => {
        const text = coated('wait 5 min');
        const finding = await one(text, 'laser-on-wet');
        expect(finding.message).toMatch(/^one burns 400 mm² of shellac that is still wet/);
        await expectMended(text, finding);
    });
    it('is silent once it is dry, and for bare wood', async () => {
        await silent(coated('wait 12 h'), 'laser-on-wet');
        await silent(recipe(`${board}\n ${at('one', '20 x 20', '50, 50')}`), 'laser-on-wet');
    });
});

describe('laser-on-foil', () => {
    const again = (place: string, peel = '') =>
        inlayRecipe().replace(
            'peel bird',
            `${peel} engrave line on tray { ${place} tone 60 % air off } ${peel === '' ? 'peel bird' : ''}`,
        );
    it('the backing of a laid veneer under the beam', async () => {
        const text = again('rectangle 60 x 60 mm');
        await expectMended(text, await one(text, 'laser-on-foil'));
    });
    it('is silent beside it, and once it is peeled', async () => {
        await silent(again('rectangle 20 x 20 mm at 20, 20 mm'), 'laser-on-foil');
        await silent(again('rectangle 60 x 60 mm', 'peel bird'), 'laser-on-foil');
    });
});

describe('mask-under-pour', () => {
    const masked = (before: string, after: string) =>
        recipe(
            `${board}\n ${before} ${at('one', '20 x 20', '50, 50')} ${after} fill one with tide-blue wait 24 h peel b sand b { flush then 0.1 mm grits 120 }`,
        );
    it('tape laid across the pocket', async () => {
        const text = masked('', `${seal} mask b`);
        const finding = await one(text, 'mask-under-pour');
        expect(finding.message).toContain('Tape lies across 400 mm² of one');
        await expectMended(text, finding);
    });
    it('is silent where the beam opened the tape', async () => silent(masked('mask b', seal), 'mask-under-pour'));
});

describe('skin-left', () => {
    const relief = (depth: string) => inlayRecipe({ relief: `art flag inverse within grown 6 mm mirror depth ${depth} air off` });
    it('a veneer half that is not burnt through', async () => {
        const text = relief('0.4 mm');
        const finding = await one(text, 'skin-left');
        expect(finding.message).toBe('relief leaves 0.2 mm of the 0.6 mm veneer standing: it has to go through.');
        expect(await expectMended(text, finding)).toContain('depth through');
    });
    it('is silent for `through`, and for more than the thickest', async () => {
        await silent(relief('through'), 'skin-left');
        await silent(relief('0.65 mm'), 'skin-left');
    });
});

describe('a veneer that was thinned before its half is burnt', () => {
    const thinned = (by: string) =>
        inlayRecipe()
            .replace('recipe tray', `${coupon('maple-06', 'shed')} recipe tray`)
            .replace('engrave relief', `${by} engrave relief`);
    const causes = async (by: string) =>
        (await one(thinned(by), 'veneer-proud')).related.flatMap(({ message, rule }) => (rule === undefined ? message : []));
    it('lies too low: what thinned it stands beside the finding', async () => {
        expect(await causes('sand bird { take 0.45 mm grits 120 }')).toEqual(['This sanding takes the whole veneer down.']);
        expect(await causes('engrave thin on bird { rectangle 78 x 68 mm depth 0.5 mm air off }')).toEqual([
            'thin takes the whole veneer down.',
        ]);
    });
    it('is no cause where it took off nothing', async () => {
        await silent(thinned('sand bird { flush grits 120 }'), 'veneer-proud');
    });
});

describe('mark-dug-away', () => {
    const word = at('word', '40 x 10', '50, 50', 'tone 70 %');
    it('a pocket across a word that was coloured, with its area; digging first mends it', async () => {
        const text = recipe(`${board}\n ${word} ${at('pond', '20 x 20', '40, 50')}`);
        const finding = await one(text, 'mark-dug-away');
        // The word reaches from 30 to 70 mm, the pocket from 30 to 50: 20 x 10 mm are in both.
        expect(finding.message).toContain('pond digs away 200 mm² of word');
        const after = await expectMended(text, finding);
        await silent(after, 'mark-dug-away');
    });
    it('has no fix where something else is done to the blank between them', async () => {
        const text = recipe(`${board}\n ${word} ${seal} ${at('pond', '20 x 20', '40, 50')}`);
        expect((await one(text, 'mark-dug-away')).fixes).toEqual([]);
    });
    it('is silent beside it, for a colour on the floor, and for colour over colour', async () => {
        await silent(recipe(`${board}\n ${word} ${at('pond', '20 x 20', '40, 80')}`), 'mark-dug-away');
        await silent(recipe(`${board}\n ${at('pond', '20 x 20', '40, 50')} ${word}`), 'mark-dug-away');
        await silent(recipe(`${board}\n ${word} ${at('shade', '20 x 20', '40, 50', 'tone 40 %')}`), 'mark-dug-away');
    });
});

describe('oil-before-filling', () => {
    const pocket = at('pond', '20 x 20', '50, 50');
    const fill = 'fill pond with buoy-red { overfill 10 % }\n wait 2 d\n sand b { flush then 0.1 mm grits 120, 180 }\n';
    it('oil in an open pocket that is filled afterwards; the finish is put on last', async () => {
        const text = recipe(`${board}\n ${pocket} finish b with drying-oil\n wait 24 h\n ${fill}`);
        const finding = await one(text, 'oil-before-filling');
        expect(finding.message).toContain('buoy-red does not hold on it');
        const after = await expectMended(text, finding);
        await silent(after, 'oil-before-filling');
        expect(after.indexOf('finish b')).toBeGreaterThan(after.indexOf('sand b'));
    });
    it('wax as well', async () => {
        const text = recipe(`${board}\n ${pocket} finish b with wax\n wait 24 h\n ${fill}`);
        expect((await one(text, 'oil-before-filling')).message).toContain('wax goes into pond');
    });
    it('is silent for a sealer, for shellac, for a pocket dug through the oil, and for oil afterwards', async () => {
        await silent(recipe(`${board}\n ${pocket} ${seal} ${fill}`), 'oil-before-filling');
        await silent(recipe(`${board}\n ${pocket} finish b with shellac-coat\n wait 24 h\n ${fill}`), 'oil-before-filling');
        await silent(recipe(`${board}\n finish b with drying-oil\n wait 24 h\n ${pocket} ${fill}`), 'oil-before-filling');
        await silent(recipe(`${board}\n ${pocket} ${fill} finish b with drying-oil\n`), 'oil-before-filling');
    });
});
