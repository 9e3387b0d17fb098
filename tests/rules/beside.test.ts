import { describe, expect, it } from 'vitest';
import { pngOf } from '../art/pictures';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

const rows = Uint8Array.from({ length: 20 * 41 }, (_, i) => (i % 41 > 20 ? 255 : 0));
/** Loose hairs of 0.25 mm, all around to 13.92 mm from the middle across and 13.02 mm down. */
const hairs = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">
  <path d="M6.08 10h0.25v20h-0.25z"/><path d="M33.67 10h0.25v20h-0.25z"/><path d="M10 6.98h20v0.25h-20z"/><path d="M10 32.77h20v0.25h-20z"/></svg>`;
workshop({ 'photo.png': pngOf({ columns: 40, rows: 20, depth: 8, colour: 0 }, rows), 'hairs.svg': hairs });

const spare = 'blank spare { of walnut-12 size 100 x 80 mm grain along width }';
const board = 'blank b { of walnut-12 size 100 x 80 mm grain along width }';

describe('cuts, as engravings', () => {
    const cut = (body: string, of_ = 'walnut-12', stock = '') =>
        recipe(`art photo "photo.png" { width 8 mm } blank b { of ${of_} size 100 x 80 mm } cut rim on b { ${body} }`, stock);
    it('keep the laser running', async () => {
        expect((await one(cut('rectangle 90 x 70 mm speed 0.02 mm/s power 40 %'), 'long-burn')).message).toContain('rim keeps');
    });
    it('have no outline of a bitmap to go by', async () => {
        const finding = await one(cut('art photo'), 'outline-of-bitmap');
        expect(finding.message).toBe('photo is a bitmap: there is no outline to cut along.');
        expect(finding.fixes).toEqual([]);
    });
    it('are poison too, which is told at the blank', async () => {
        const text = cut('circle 40 mm', 'pvc-3', 'board pvc-3 { wood white-ash thickness 3 mm }');
        expect(words(text, await one(text, 'never-burn'))).toBe('b');
    });
    it('go through foil under a fibre source, which is told at the blank', async () => {
        const text = recipe(
            'blank b { of maple-06 size 60 x 60 mm grain along width backing foil } cut rim on b { circle 40 mm }',
        ).replace('beam co2', 'beam fibre');
        expect(words(text, await one(text, 'foil-and-fibre'))).toBe('b');
    });
    it('are no work beside resin that has not cured', async () => {
        const finding = await one(
            fillRecipe({ after: 'cut rim on disc { circle 90 mm }' }).replace('wait 24 h', ''),
            'laser-on-resin',
        );
        expect(finding).toMatchObject({ severity: 'error', fixes: [{ title: 'Do rim before the fill' }] });
    });
    it('shift what is cut out of them afterwards', async () => {
        const text = recipe(`${board} cut rim on b { circle 60 mm } cut hole on b { circle 20 mm }`);
        expect((await one(text, 'cut-too-early')).fixes[0]!.title).toBe('Do hole first');
    });
});

describe('another blank', () => {
    it('that is sanded does not make this one’s resin or glue hard', async () => {
        const sanded = fillRecipe({ after: `${spare} sand spare { take 0.1 mm grits 120 } sand disc { flush grits 120 }` });
        expect(await of(sanded.replace('wait 24 h', 'wait 2 h'), 'sand-before-cure')).toHaveLength(1);
    });
    it('may be sanded while the backing is still on this one', () =>
        silent(
            inlayRecipe().replace('peel bird', `${spare} sand spare { take 0.1 mm grits 120 } peel bird`),
            'sand-before-peel',
        ));
    it('is not where the veneer is sanded away', async () => {
        const text = inlayRecipe({ after: 'sand tray { flush then 0.36 mm grits 120, 180, 240 }' }).replace(
            'inlay relief',
            `${spare} sand spare { take 0.1 mm grits 120 } inlay relief`,
        );
        expect(words(text, await one(text, 'veneer-thin'))).toBe('0.36 mm');
    });
    it('that is sanded, or this one finished, is not sanding it dull', async () => {
        const layers = (between: string) =>
            fillRecipe({ pocket: 'art flag depth 3 mm air off' })
                .replace('resin tide-blue { kind slow-epoxy', 'resin tide-blue { kind slow-epoxy recoat 4 .. 10 h')
                .replace('wait 24 h', `wait 24 h ${between} fill hollow with tide-blue wait 24 h`);
        expect(await of(layers(`${spare} sand spare { take 0.02 mm grits 180 }`), 'recoat-window')).toHaveLength(1);
        expect(await of(layers('finish disc with wax'), 'recoat-window')).toHaveLength(1);
    });
    it('that is finished does not stand in the way of sanding this one flush at the end', async () => {
        const text = fillRecipe({ after: `${spare} finish spare with oil-varnish do "the oily rags" for 2 min` });
        expect(await expectMended(text, await one(text, 'left-proud'))).toMatch(/2 min\n *sand disc \{/);
    });
    it('that is sanded asks no depth of this one’s pocket', async () => {
        const shallow = fillRecipe({
            pocket: 'art flag depth 0.3 mm air off',
            wood: 'walnut-12',
            after: 'sand disc { flush then 0.1 mm grits 80, 120, 180 }',
        });
        const wish = async (text: string) => (await one(text, 'shallow-fill')).message;
        const before = shallow.replace('engrave hollow', `${spare} sand disc { take 1 mm grits 120 } engrave hollow`);
        const elsewhere = shallow.replace('wait 24 h', `${spare} sand spare { take 1 mm grits 120 } wait 24 h`);
        expect(await wish(shallow)).toContain('mm would do');
        for (const text of [before, elsewhere]) expect(await wish(text)).toBe(await wish(shallow));
    });
    it('has a coupon of its own, which is as old as it likes', async () => {
        const squares = 'pitch 0.1 mm burn 40 % at 400 mm/s gives 0.1 mm burn 80 % at 300 mm/s gives 0.34 mm';
        const text = recipe(
            `${spare} blank b { of ash-10 size 100 x 80 mm } engrave e on b { art flag depth 0.2 mm air off }`,
            `coupon ash-10 on shed { burnt 2026-06-01 ${squares} }`,
        )
            .replace('coupon walnut-12 on shed {', 'coupon walnut-12 on shed { burnt 2026-01-01')
            .replace('laser shed {', 'laser shed { serviced 2026-03-01');
        await silent(text, 'stale-coupon');
        const ours = text.replace('blank b { of ash-10', 'blank b { of walnut-12');
        expect(await of(ours, 'stale-coupon')).toHaveLength(1);
    });
});

describe('one of two things that are asked for together', () => {
    it('a resin that does not say how long it cures is no failed check', async () => {
        const text = fillRecipe().replace('resin tide-blue { kind slow-epoxy', 'resin tide-blue {');
        await silent(text, 'sand-before-cure');
        await silent(inlayRecipe({ inlay: 'clearance 0.15 mm' }), 'sand-before-cure');
    });
    it('a finish that is sanded flush, if finely', async () => {
        const sanded = (how: string) =>
            recipe(`${board} engrave e on b { art flag depth 0.4 mm air off } finish b with wax sand b { ${how} grits 320 }`);
        expect(await of(sanded('flush'), 'finish-before-sanding')).toHaveLength(1);
        expect(await of(sanded('take 0.1 mm'), 'finish-before-sanding')).toHaveLength(1);
        await silent(sanded(''), 'finish-before-sanding');
    });
    it('power without speed holds no depth, so that more passes may be asked for', async () => {
        const heavy = (held: string) => recipe(`${board} engrave e on b { art flag depth 1 mm passes 1 ${held} air off }`);
        expect((await one(heavy('power 80 %'), 'one-heavy-pass')).fixes).toHaveLength(1);
        expect((await one(heavy('speed 100 mm/s'), 'one-heavy-pass')).fixes).toHaveLength(1);
    });
    it('passes alone are several words', async () => {
        const text = recipe(`${board} engrave e on b { art flag depth 40 mm passes 1 air off }`);
        expect((await one(text, 'depth-unreachable')).message).toContain('with the passes that are written');
    });
    it('a step by hand that does not speak of rags', async () => {
        const oiled = recipe(`${board} sand b { take 0.1 mm grits 120 } finish b with oil-varnish do "sign the back" for 2 min`);
        expect(await of(oiled, 'oily-rags')).toHaveLength(1);
    });
    it('of two masks the one that stays is told', async () => {
        const text = recipe(`${board} mask b peel b mask b engrave e on b { art flag tone 60 % air off }`);
        expect(await of(text, 'mask-left-on')).toHaveLength(1);
    });
    it('only art that stands alone, at a place that is written, is moved onto the blank', async () => {
        const off = (placed: string) => recipe(`${board} engrave e on b { ${placed} depth 0.4 mm air off }`);
        expect((await one(off('art flag at 95, 40 mm'), 'off-blank')).fixes).toHaveLength(1);
        expect((await one(off('art flag at 95, 40 mm repeat 2 x 1 every 5 x 5 mm'), 'off-blank')).fixes).toEqual([]);
        expect((await one(off('art flag at 95, 40 mm circle 5 mm at 20, 20 mm'), 'off-blank')).fixes).toEqual([]);
    });
    it('other art on the piece does not keep a picture from being burnt smaller', async () => {
        const text = recipe(
            `art photo "photo.png" { width 16 mm } ${board}
             engrave face on b { art photo at 20, 40 mm tone 80 % pitch 0.1 mm air off }
             engrave flags on b { art flag at 70, 40 mm circle 5 mm at 50, 70 mm tone 60 % air off }`,
        );
        await expectMended(text, await one(text, 'picture-resolution'));
    });
});

describe('dots in the veneer half', () => {
    it('are no edge for an inlay either', async () => {
        const text = inlayRecipe({
            head: 'art photo "photo.png" { width 8 mm dither ordered }',
            relief: 'art photo inverse within grown 6 mm mirror tone 80 % air off',
        });
        expect((await of(text, 'dotted-depth')).map(({ message }) => message)).toEqual([expect.stringContaining('for an inlay')]);
    });
});

describe('sanding', () => {
    it('that takes a shallow pocket away takes no colour', () =>
        silent(
            recipe(`${board} engrave e on b { art flag depth 0.1 mm air off } sand b { take 0.3 mm grits 120 }`),
            'tone-sanded-away',
        ));
    it('for the marks is not offered where too little veneer would stay', async () => {
        const marked = (depth: string) =>
            inlayRecipe({
                pocket: `art flag depth ${depth} air off`,
                inlay: 'clearance 0.15 mm glue wood-glue marks 3',
                after: 'sand tray { flush grits 120, 180, 240 }',
            });
        expect((await one(marked('0.55 mm'), 'marks-stay')).fixes).toHaveLength(1);
        expect((await one(marked('0.35 mm'), 'marks-stay')).fixes).toEqual([]);
    });
});

describe('what food touches of a piece', () => {
    const touched = (steps: string, blanks = '') =>
        recipe(
            `blank tray { of ash-10 size 200 x 150 mm grain along width touched by food } ${blanks} ${steps} do "the oily rags" for 2 min`,
            'sealer film-seal { dry 1 h }',
        );
    it('a sealer that is on it, and no longer when it has been sanded off', async () => {
        const sealed = 'seal tray with film-seal wait 2 h';
        expect((await one(touched(sealed), 'food-contact')).message).toContain('nothing written of film-seal');
        await silent(touched(`${sealed} sand tray { take 0.2 mm grits 120 }`), 'food-contact');
    });
    it('no more of a glue than a hair in the seams; a cut edge not at all', async () => {
        const text = inlayRecipe({
            blanks: 'blank tray { of walnut-12 size 200 x 150 mm grain along width touched by food } blank bird { of maple-06 size 80 x 70 mm grain along width backing foil }',
        });
        expect(await one(text, 'food-contact')).toMatchObject({
            severity: 'info',
            message: expect.stringContaining('nothing written of wood-glue'),
        });
        await silent(touched('cut rim on tray { circle 100 mm }'), 'food-contact');
        await silent(touched('engrave hole on tray { circle 20 mm depth through air off }'), 'food-contact');
    });
});

describe('an offset that opens narrow slots', () => {
    it.each(['at 13.97, 50 mm', 'at 86.03, 50 mm', 'at 50, 13.07 mm', 'at 50, 86.93 mm'])(
        'is not offered where it would leave the blank: %s',
        async (place) => {
            const hairs = fillRecipe({ pocket: `art hairs ${place} depth 1.2 mm air off` }).replace(
                'art flag',
                'art hairs "hairs.svg" art flag',
            );
            expect((await one(hairs, 'narrow-slots')).fixes).toEqual([]);
            const inside = hairs.replace(place, '');
            expect((await one(inside, 'narrow-slots')).fixes).toHaveLength(1);
        },
    );
});

describe('halves that differ', () => {
    const halves = (pocket: string, relief: string) =>
        inlayRecipe({ pocket: `${pocket} depth 0.55 mm air off`, relief: `${relief} mirror depth through air off` });
    const flag = 'art flag inverse within grown 6 mm';
    it('in their shapes are told by them', async () => {
        const text = halves('art flag rectangle 12 x 8 mm at 150, 120 mm', flag);
        expect((await one(text, 'halves-differ')).message).toContain('in their shapes (none; rectangle 12 mm x 8 mm)');
    });
    it('are made alike where either holds one piece of art only', async () => {
        const [mine, theirs] = [
            `${flag} art diamond inverse within grown 2 mm at 70, 60 mm`,
            'art flag art diamond at 40, 40 mm',
        ];
        for (const text of [halves('art diamond', mine), halves(theirs, flag)]) {
            expect((await one(text, 'halves-differ')).fixes).toEqual([]);
        }
    });
});

describe('wood glue on a sealed floor', () => {
    const beside = (x: number, y: number) =>
        inlayRecipe().replace(
            'inlay relief',
            `engrave dot on tray { circle 4 mm at ${x}, ${y} mm tone 60 % air off } seal tray with shellac wait 2 h inlay relief`,
        );
    it.each([
        [60, 75],
        [140, 75],
        [100, 40],
        [100, 110],
    ])('the pocket is engraved later whatever lies beside it, at %s, %s', async (x, y) => {
        const text = beside(x, y);
        await expectMended(text, await one(text, 'glue-on-sealed'));
    });
    it('but not what lies in it', async () => {
        expect((await one(beside(100, 75), 'glue-on-sealed')).fixes).toEqual([]);
    });
});

describe('a picture of dots', () => {
    const picture = (pitch: string, dither = 'dither ordered') =>
        recipe(
            `art photo "photo.png" { width 8 mm ${dither} } ${board} engrave e on b { art photo power 40 % speed 300 mm/s passes 1 pitch ${pitch} }`,
        );
    it('may have them as far apart as the spot is wide', async () => {
        await silent(picture('0.15 mm'), 'coarse-pitch');
    });
    it('but no further, and lines of what is burnt whole may not', async () => {
        expect((await one(picture('0.16 mm'), 'coarse-pitch')).message).toMatch(/^Lines 0\.16 mm apart with a spot of 0\.15 mm/);
        expect((await one(picture('0.15 mm', ''), 'coarse-pitch')).severity).toBe('warning');
    });
});

describe('the place of a finding, and what is told beside it', () => {
    const engraved = (rest: string, of_ = 'walnut-12') =>
        recipe(`art photo "photo.png" { width 8 mm } blank b { of ${of_} size 100 x 80 mm } engrave e on b { ${rest} air off }`);
    const beside = async (text: string, rule: string) => (await one(text, rule)).related.map(({ message }) => message);
    it('is the depth that was asked for', async () => {
        const beyond = engraved('art flag depth 1.2 mm passes 1');
        expect(words(beyond, await one(beyond, 'outside-coupon'))).toBe('1.2 mm');
        const through = engraved('art flag depth through power 40 % speed 600 mm/s passes 1');
        expect(words(through, await one(through, 'settings-miss-depth'))).toMatch(/through$/);
    });
    it('the thickness of the board, the wish for the depth, the use of the bitmap', async () => {
        expect(await beside(engraved('art flag depth 13 mm'), 'deeper-than-blank')).toEqual(['The thickness is written here.']);
        expect(await beside(fillRecipe({ pocket: 'art flag depth 0.3 mm air off' }), 'shallow-fill')).toEqual([
            'Its depth is asked for here.',
        ]);
        expect(await beside(engraved('art photo depth 0.1 mm outline 1'), 'outline-of-bitmap')).toEqual([
            'The bitmap is used here.',
        ]);
    });
    it('a board that is too thin for a deeper fill is only sanded less', async () => {
        const text = fillRecipe({
            pocket: 'art flag depth 0.6 mm air off',
            wood: 'thin',
            after: 'sand disc { flush then 0.5 mm grits 80, 120, 180 }',
        }).replace('recipe c', 'board thin { wood white-ash thickness 1.7 mm }\nrecipe c');
        expect((await one(text, 'fill-sanded-away')).fixes.map(({ title }) => title)).toEqual([
            expect.stringMatching(/^Take only 0\.\d+ mm off the face$/),
        ]);
    });
});
