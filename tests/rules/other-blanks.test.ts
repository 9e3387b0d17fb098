import { describe, expect, it } from 'vitest';
import { pngOf } from '../art/pictures';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, of, one, recipe, silent, workshop } from './harness';

const rows = Uint8Array.from({ length: 20 * 41 }, (_, i) => (i % 41 > 20 ? 255 : 0));
workshop({ 'photo.png': pngOf({ columns: 40, rows: 20, depth: 8, colour: 0 }, rows) });

const spare = 'blank spare { of walnut-12 size 100 x 80 mm grain along width }';
const board = 'blank b { of walnut-12 size 100 x 80 mm grain along width }';

describe('what is done to another blank', () => {
    it('neither seals, nor dries, nor finishes, nor sands this one', async () => {
        const sealed = fillRecipe({ between: `${spare} seal spare with shellac wait 2 h` });
        expect(await of(sealed, 'unsealed-fill')).toHaveLength(1);
        await silent(
            fillRecipe({ between: `${spare} seal disc with shellac wait 2 h seal spare with shellac` }),
            'fill-before-dry',
        );
        const finished = recipe(
            `${board} ${spare} engrave e on b { art flag depth 0.4 mm air off } finish spare with wax sand b { take 0.1 mm grits 120, 180 }`,
        );
        await silent(finished, 'finish-before-sanding');
        const sanded = fillRecipe({
            after: `${spare} sand disc { flush then 0.1 mm grits 120 } sand spare { take 2 mm grits 80 }`,
        });
        await silent(sanded, 'fill-sanded-away');
        await silent(
            recipe(`${board} ${spare} engrave e on b { art flag tone 60 % air off } sand spare { take 0.3 mm grits 120 }`),
            'tone-sanded-away',
        );
        await silent(
            recipe(`${board} ${spare} cut rim on spare { circle 60 mm } engrave e on b { art flag tone 60 % air off }`),
            'cut-too-early',
        );
        await silent(fillRecipe({ after: `${spare} engrave e on spare { art flag tone 60 % air off }` }), 'laser-on-resin');
    });
});

describe('rules of engravings that hold for cuts too', () => {
    const cut = (body: string) => recipe(`${board} cut rim on b { ${body} }`);
    it('off the blank, beyond the field, beyond the machine', async () => {
        expect(await of(cut('circle 90 mm'), 'off-blank')).toHaveLength(1);
        expect(await of(cut('rectangle 700 x 20 mm'), 'beyond-field')).toHaveLength(1);
        expect(await of(cut('circle 40 mm power 60 W'), 'beyond-machine')).toHaveLength(1);
        expect(await of(cut('circle 40 mm speed 900 mm/s'), 'beyond-machine')).toHaveLength(1);
    });
    it('nothing burns', async () => {
        expect(await of(cut('art flag #sail'), 'nothing-burns')).toHaveLength(1);
    });
    it('silent for one that is in order', async () => {
        for (const rule of ['off-blank', 'beyond-field', 'beyond-machine', 'nothing-burns'])
            await silent(cut('circle 40 mm power 80 % speed 10 mm/s'), rule);
    });
});

describe('dots for an inlay', () => {
    it('are no edge, in either half', async () => {
        const dotted = (halves: { pocket?: string; relief?: string }) =>
            inlayRecipe({ head: 'art photo "photo.png" { width 8 mm dither ordered }', ...halves });
        expect(await of(dotted({ pocket: 'art photo tone 80 % air off' }), 'dotted-depth')).toMatchObject([
            { message: expect.stringContaining('for an inlay') },
        ]);
    });
});

describe('what the numbers say will go wrong', () => {
    const deep = (depth: string) =>
        recipe(`${board} engrave e on b { art flag depth ${depth} air off allow deeper-than-blank because "?" }`);
    it('deeper than the thick end of the board cannot be allowed, deeper than the thin end can', async () => {
        expect(await one(deep('12.4 mm'), 'deeper-than-blank')).toMatchObject({ firm: true });
        await silent(deep('12.1 mm'), 'deeper-than-blank');
        expect(await of(deep('12.1 mm').replace(/ allow .*\?"/, ''), 'deeper-than-blank')).toMatchObject([{ firm: false }]);
    });
    it('a veneer half that is not inverse cannot be allowed', async () => {
        const relief = 'art flag mirror depth through air off allow not-inverse because "?"';
        expect(await one(inlayRecipe({ relief }), 'not-inverse')).toMatchObject({ firm: true });
    });
});

describe('marks-stay', () => {
    it('says that nothing comes off where nothing does', async () => {
        const text = inlayRecipe({
            inlay: 'clearance 0.15 mm glue wood-glue marks 3',
            after: 'sand tray { flush grits 120, 180, 240 }',
        });
        const finding = await one(text, 'marks-stay');
        expect(finding.message).toContain('nothing comes off the face of tray.');
        await expectMended(text, finding);
    });
});
