import { describe, expect, it } from 'vitest';
import { memoryWorkshop } from '../kit/memory-workshop';
import { planOf } from '../kit/plan-of';
import { art, coupon, inlayRecipe } from '../kit/shop';
import { expectMended, recipe as made, one, silent, under, workshop } from './harness';

const drawn = {
    'rings.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">
        <path id="washer" fill-rule="evenodd" d="M10 10H50V50H10ZM10.5 20H30V40H10.5Z"/></svg>`,
    'square.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><path d="M0 0H40V40H0Z"/></svg>`,
};
workshop(drawn);

const stock = `
${coupon('ash-10', 'shed', '  burn 80 % at 300 mm/s x 4 gives 1.33 mm\n')}
${coupon('maple-06', 'shed')}
board thin { wood sugar-maple  thickness 3 mm +- 0.1 mm }
`;
const recipe = (body: string): string => made(body, stock);
const board = 'blank b { of ash-10 size 100 x 100 mm grain along width }';
const word = (place = '70, 50') => `engrave word on b { rectangle 20 x 10 mm at ${place} mm tone 60 % air off }\n`;
const seal = 'seal b with shellac { coats 2 }\n wait 2 h\n';

/** What a rule says in a variant, of what the variant itself brings about. */
async function inVariant(base: string, variant: string, rule: string) {
    const kit = await memoryWorkshop({ ...art, ...drawn });
    const found = (await kit.workshop.tradeFindings(await kit.open(`${base}\n${variant}\n`))) ?? [];
    expect(found.filter((finding) => finding.rule === rule && finding.where.offset < base.length)).toEqual([]);
    return found.filter(({ rule: by, where }) => by === rule && where.offset >= base.length);
}

describe('cut-too-early, where the work runs across what was cut out', () => {
    const disc = (how: string, after: string, blank = board): string =>
        recipe(`${blank}\n cut disc on b { circle 40 mm at 50, 50 mm ${how} air on }\n ${after}`);
    it('a part of the work lies on the loose disc, with how much; burning it first mends it', async () => {
        const text = disc('', word());
        const finding = await one(text, 'cut-too-early');
        // The word reaches from 60 to 80 mm, the disc to a little less than 70 beside its middle.
        expect(finding.message).toMatch(
            /^disc cuts a part free, and 9\d(\.\d)? mm² of word are burnt on it afterwards: it will have shifted or dropped/,
        );
        await expectMended(text, finding);
    });
    it('is silent with tabs, with a backing, beside the disc, and for a hole that takes little of the work', async () => {
        await silent(disc('tabs 3', word()), 'cut-too-early');
        await silent(disc('', word(), board.replace('size', 'backing tape size')), 'cut-too-early');
        await silent(disc('', word('85, 50')), 'cut-too-early');
        await silent(disc('', word().replace('20 x 10', '20 x 90').replace('70, 50', '79, 50')), 'cut-too-early');
    });
    it('is said in a variant that takes the tabs away', async () => {
        const base = disc('tabs 3', word());
        expect(await inVariant(base, 'recipe loose based on thing { cut disc { tabs 0 } }', 'cut-too-early')).toHaveLength(1);
    });
});

describe('laser-on-old-tape', () => {
    const taped = (overfill: string, between = '', last = 'peel b'): string =>
        recipe(
            `${board}\n mask b\n engrave pond on b { rectangle 20 x 20 mm at 30, 50 mm depth 0.8 mm air off }\n ${seal} fill pond with tide-blue { overfill ${overfill} }\n wait 24 h\n ${between} ${word()} ${last}`,
        );
    it('letters burnt through tape that was poured over, with their area; peeling first mends it', async () => {
        const text = taped('10 %');
        const finding = await one(text, 'laser-on-old-tape');
        expect(finding.message).toBe(
            'word burns 200 mm² through tape over which tide-blue was poured: peel b first, and mask it again if it has to be.',
        );
        const after = await expectMended(text, finding);
        expect(after.match(/peel b/g)).toHaveLength(1);
        await expectMended(taped('10 %', '', ''), await one(taped('10 %', '', ''), 'laser-on-old-tape'));
    });
    it('is silent on new tape, on none, and where the fill was poured level', async () => {
        await silent(taped('10 %', 'peel b\n mask b\n'), 'laser-on-old-tape');
        await silent(taped('10 %', 'peel b\n', ''), 'laser-on-old-tape');
        await silent(taped('0 %'), 'laser-on-old-tape');
    });
    it('is said in a variant that pours over', async () => {
        expect(
            await inVariant(taped('0 %'), 'recipe full based on thing { fill pond { overfill 10 % } }', 'laser-on-old-tape'),
        ).toHaveLength(1);
    });
});

describe('thin-wall, between two cuts', () => {
    const plate = (gap: number, sheet = 'ash-10'): string =>
        recipe(
            `blank b { of ${sheet} size 140 x 90 mm }\n cut hole on b { circle 6 mm at ${20 + gap + 3}, 45 mm air on }\n cut outline on b { rectangle 100 x 60 mm at 70, 45 mm air on }`,
        );
    it('a hole near the outline, with how much to leave', async () => {
        // A fifth of 10 mm, and a quarter more in ring-porous ash.
        expect((await one(plate(0.4), 'thin-wall')).message).toBe(
            'Between outline and hole only 0.4 mm of wood is left in a board of 10 mm: it chars through or snaps. Leave 2.5 mm.',
        );
        // The least of all in thin maple, which has no rings to split along.
        expect((await one(plate(0.4, 'thin'), 'thin-wall')).message).toContain('Leave 0.8 mm');
    });
    it('two lines of one cut', async () => {
        const ring = recipe(
            `blank b { of thin size 100 x 100 mm }\n art rings "rings.svg"\n cut ring on b { art rings at 50, 50 mm air on }`,
        );
        expect((await one(ring, 'thin-wall')).message).toContain('Within ring only 0.5 mm of wood is left in a board of 3 mm');
    });
    it('is silent with wood enough, for a notch, and in a veneer', async () => {
        await silent(plate(2.6), 'thin-wall');
        await silent(plate(0.85, 'thin'), 'thin-wall');
        await silent(plate(-3), 'thin-wall');
        await silent(plate(0.4, 'maple-06'), 'thin-wall');
    });
    it('is said in a variant that moves the hole', async () => {
        expect(
            await inVariant(plate(3), 'recipe near based on thing { cut hole { circle 6 mm at 23.4, 45 mm } }', 'thin-wall'),
        ).toHaveLength(1);
    });
});

describe('a pocket in a laid veneer', () => {
    const second = (pocket: string): string =>
        inlayRecipe({
            head: 'art square "square.svg"',
            pocket: 'art square at 100, 75 mm depth 0.55 mm air off',
            relief: 'art square inverse within grown 6 mm mirror depth through air off',
            after: `sand tray { flush then 0.10 mm grits 120, 180, 240 }\n engrave second on tray { ${pocket} air off }`,
        }).replace('veneer maple-06', `${coupon('maple-06', 'shed')}\nveneer maple-06`);
    const deep = (mm: number): string => second(`rectangle 10 x 10 mm at 100, 75 mm depth ${mm} mm`);
    it('floor-in-glue: a skin of veneer is left above its glue, with the depth that goes through', async () => {
        const finding = await one(deep(0.33), 'floor-in-glue');
        // 0.49 mm of veneer less 0.1 mm of sanding, by a coupon that is the same for both woods: 0.39 - 0.33 mm.
        expect(finding.message).toBe(
            'Over 100 mm² second leaves only 0.06 mm of maple-06 above its glue: engrave it at least 0.55 mm deep, through veneer and glue.',
        );
        await expectMended(deep(0.33), finding);
    });
    it('floor-in-glue: the floor lies in the glue', async () => {
        expect((await one(deep(0.42), 'floor-in-glue')).message).toContain('second ends in the glue below the veneer');
    });
    it('floor-in-glue is silent well above it, through it, beside it, and for a colour', async () => {
        await silent(deep(0.2), 'floor-in-glue');
        await silent(deep(0.55), 'floor-in-glue');
        await silent(second('rectangle 10 x 10 mm at 40, 75 mm depth 0.33 mm'), 'floor-in-glue');
        await silent(second('rectangle 10 x 10 mm at 100, 75 mm tone 60 %'), 'floor-in-glue');
    });
    it('floor-in-glue: what stays open and may well end in the glue, by the spread of the curve', async () => {
        // 0.39 mm of veneer and 0.06 mm of glue: at 0.46 mm the floor lies 0.01 mm below it.
        const finding = await one(deep(0.46), 'floor-in-glue');
        expect(finding.message).toMatch(
            /^Over 100 mm² second ends 0\.01 mm below the glue of maple-06, give or take 0\.\d+ mm: it may well end in the glue, which then is seen\. To be clear of it, engrave it 0\.\d+ mm deep\.$/,
        );
        await expectMended(deep(0.46), finding);
    });
    it('floor-in-glue leaves a pocket that is covered to the advice of its step', async () => {
        const filled = `${deep(0.46)}`.replace(/\}\s*$/, ' fill second with tide-blue }');
        await silent(filled, 'floor-in-glue');
        const advice = (await planOf(filled, drawn)).steps.flatMap((step) => step.advice ?? []);
        expect(advice.join('\n')).toMatch(/its floor is to lie 0\.01 mm below the glue under maple-06, give or take 0\.\d+ mm/);
    });
    it('floor-in-glue is said in a variant that digs less deep', async () => {
        expect(
            await inVariant(deep(0.55), 'recipe shallow based on tray { engrave second { depth 0.33 mm } }', 'floor-in-glue'),
        ).toHaveLength(1);
    });

    const strip = (place: string): string => second(`rectangle 10 x 30 mm at ${place} mm depth 0.55 mm`);
    it('sliver-left: a strip along the veneer’s edge, with its area', async () => {
        const { message } = await one(strip('114.6, 75'), 'sliver-left');
        // The veneer ends at 120 mm, or up to half of the 0.15 mm of clearance before it; the burn at 119.6; both are 30 mm long.
        const [, size] = /^second leaves ([\d.]+) mm² of relief in strips narrower than 0\.5 mm/.exec(message) ?? [];
        expect(Number(size)).toBeGreaterThan(30 * (0.4 - 0.075));
        expect(Number(size)).toBeLessThan(30 * 0.4);
    });
    it('sliver-left is silent further inside, over the edge, across a corner, and beside the veneer', async () => {
        await silent(strip('110, 75'), 'sliver-left');
        await silent(strip('118, 75'), 'sliver-left');
        await silent(second('circle 20 mm at 120, 95 mm depth 0.55 mm'), 'sliver-left');
        await silent(strip('140, 75'), 'sliver-left');
    });
    it('sliver-left is said in a variant that moves the burn', async () => {
        expect(
            await inVariant(
                strip('110, 75'),
                'recipe moved based on tray { engrave second { rectangle 10 x 30 mm at 114.6, 75 mm } }',
                'sliver-left',
            ),
        ).toHaveLength(1);
    });

    const unsanded = (between: string): string =>
        deep(0.55).replace('sand tray { flush then 0.10 mm grits 120, 180, 240 }', between);
    it('burn-before-flush: the next pocket is burnt across a veneer that stands proud; sanding first mends it', async () => {
        const finding = await one(unsanded(''), 'burn-before-flush');
        // 0.6 mm of veneer and 0.06 mm of glue in 0.55 mm.
        expect(finding.message).toBe('relief stands 0.11 mm proud where second is burnt (100 mm²): sand tray flush first.');
        await expectMended(unsanded(''), finding);
        // That the floor comes to lie in the glue follows from it.
        await silent(unsanded(''), 'floor-in-glue');
    });
    it('burn-before-flush is silent once it is sanded, beside the veneer, and for a colour', async () => {
        await silent(deep(0.55), 'burn-before-flush');
        await silent(
            unsanded('').replace('rectangle 10 x 10 mm at 100, 75', 'rectangle 10 x 10 mm at 40, 75'),
            'burn-before-flush',
        );
        const shade = second('rectangle 10 x 10 mm at 100, 75 mm tone 60 %');
        await silent(shade.replace('sand tray { flush then 0.10 mm grits 120, 180, 240 }', ''), 'burn-before-flush');
    });
    it('burn-before-flush is said in a variant that leaves the sanding out', async () => {
        const found = await inVariant(deep(0.55), 'recipe rough based on tray { without sand tray }', 'burn-before-flush');
        expect(found.map(({ fixes }) => fixes)).toEqual([[]]);
    });

    const beside = (place: string, after: string): string =>
        inlayRecipe({
            head: `art square "square.svg"\n engrave groove on tray { rectangle 10 x 40 mm at ${place} mm depth 0.55 mm air off }`,
            pocket: 'art square at 100, 75 mm depth 0.55 mm air off',
            relief: 'art square inverse within grown 6 mm mirror depth through air off',
            after,
        });
    const filled = 'sand tray { flush grits 120 }\n fill groove with tide-blue\n wait 24 h';
    it('fill-runs-over: glue is pressed out into a pocket that touches the inlay’s and is filled afterwards', async () => {
        expect(await under(beside('125, 75', filled), 'pocket-in-pocket', 'fill-runs-over')).toMatch(
            /^wood-glue is pressed out of pocket into groove, which is meant for tide-blue: no wall is between them\. Leave .* or lay, press and sand pocket before groove is burnt\.$/,
        );
        await silent(beside('127, 75', filled), 'fill-runs-over');
    });
});

describe('island-falls-out', () => {
    const sign = (how: string, blank = 'blank b { of ash-10 size 100 x 100 mm grain along width }', more = '') =>
        recipe(
            `${blank}\n art rings "rings.svg"\n engrave word on b { rectangle 60 x 8 mm at 50, 90 mm tone 60 % air off }\n ${more} cut ring on b { art rings at 50, 50 mm ${how} air on }`,
        );
    it('the middle of a ring that is cut out drops with it, with its area', async () => {
        const finding = await one(sign(''), 'island-falls-out');
        // 19.5 by 20 mm.
        expect(finding.message).toBe(
            'The middle of a ring falls out of b with ring (390 mm²): nothing holds it. Draw a bridge to the rest, or back b with tape.',
        );
        expect(finding.spots).toHaveLength(1);
    });
    it('is silent on tape, where the ring is the piece, where its middle carries the work, and without a ring', async () => {
        await silent(sign('', 'blank b { of ash-10 size 100 x 100 mm backing tape }'), 'island-falls-out');
        await silent(
            recipe(
                `blank b { of ash-10 size 100 x 100 mm }\n art rings "rings.svg"\n cut ring on b { art rings at 50, 50 mm air on }`,
            ),
            'island-falls-out',
        );
        await silent(sign('', undefined, 'engrave dot on b { circle 8 mm at 40, 50 mm tone 60 % air off }'), 'island-falls-out');
        await silent(sign('').replace('art rings at 50, 50 mm', 'circle 20 mm at 50, 50 mm'), 'island-falls-out');
    });
    it('is said in a variant that takes the tape away', async () => {
        const base = sign('', 'blank b { of ash-10 size 100 x 100 mm backing tape }');
        expect(await inVariant(base, 'recipe bare based on thing { blank b { backing none } }', 'island-falls-out')).toHaveLength(
            1,
        );
    });
});

describe('many-to-weed', () => {
    const rings = (columns: number, before = 'mask b') =>
        recipe(
            `${board}\n art rings "rings.svg" { width 6 mm }\n ${before}\n engrave rings on b { art rings at 10, 10 mm repeat ${columns} x 13 every 7 x 7 mm tone 60 % air off }\n ${before === '' ? '' : 'peel b'}`,
        );
    it('counts what stays inside of the shapes', async () => {
        const finding = await one(rings(13), 'many-to-weed');
        expect(finding.message).toContain('rings leaves 169 pieces of tape inside of its 169 shapes');
        expect(finding.severity).toBe('info');
    });
    it('is silent for 150, and speaks for one more', async () => {
        const small = rings(13)
            .replace('width 6 mm', 'width 4 mm')
            .replace('repeat 13 x 13 every 7 x 7 mm', 'repeat 15 x 10 every 5 x 5 mm');
        await silent(small, 'many-to-weed');
        const more = small.replace('tone 60 %', 'art rings at 92, 92 mm tone 60 %');
        expect((await one(more, 'many-to-weed')).message).toContain('leaves 151 pieces');
    });
    it('is silent for fewer, and without tape', async () => {
        await silent(rings(11), 'many-to-weed');
        await silent(rings(13, ''), 'many-to-weed');
    });
});

describe('laser-on-coat', () => {
    const finished = (coat: string, wait: string, after: string) =>
        recipe(`${board}\n finish b with ${coat}\n ${wait}\n ${after}`);
    it('an engraving, with its area, and a cut, with its length; finishing afterwards mends it', async () => {
        const text = finished('water-varnish', 'wait 2 d', word());
        const finding = await one(text, 'laser-on-coat');
        expect(finding.message).toContain('word burns 200 mm² of water-varnish');
        await expectMended(text, finding);
        const cut = finished('water-varnish', 'wait 2 d', 'cut rim on b { rectangle 60 x 40 mm at 50, 50 mm air on }');
        expect((await one(cut, 'laser-on-coat')).message).toContain('rim burns 200 mm through water-varnish');
    });
    it('is silent on a sealer, on a finish that is still wet, which is graver, and under the finish', async () => {
        await silent(recipe(`${board}\n ${seal} ${word()}`), 'laser-on-coat');
        await silent(finished('water-varnish', '', word()), 'laser-on-coat');
        expect(await one(finished('water-varnish', '', word()), 'laser-on-wet')).toBeDefined();
        await silent(recipe(`${board}\n ${word()} finish b with water-varnish`), 'laser-on-coat');
    });
    it('is said in a variant that burns more', async () => {
        const base = finished('water-varnish', 'wait 2 d', word().replace('20 x 10', '0.5 x 0.5'));
        const more = 'recipe more based on thing { engrave word { rectangle 20 x 10 mm at 70, 50 mm } }';
        expect(await inVariant(base, more, 'laser-on-coat')).toHaveLength(1);
    });
});
